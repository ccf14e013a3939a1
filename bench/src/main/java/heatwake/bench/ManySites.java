package heatwake.bench;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A thousand sites of twelve channels at one reading a second through one recorder. */
public final class ManySites {
  private static final int SITES = 1000;
  private static final int SECONDS = 30;
  private static final List<Channel> CHANNELS = Arrays.asList(Channel.values()).subList(0, 12);
  private static final RigFile RIG = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  private ManySites() {}

  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("heatwake-bench");
    try (Recorder recorder = Recorder.open(folder.resolve("sites.db"), RecorderSettings.USUAL)) {
      List<RecordedRun> runs = new ArrayList<>();
      for (int i = 0; i < SITES; i++) {
        runs.add(recorder.begin(RIG));
      }
      long startNs = System.nanoTime();
      int mostWaiting = 0;
      int late = 0;
      for (int second = 1; second <= SECONDS; second++) {
        for (RecordedRun run : runs) {
          run.deliver(delivery(run.nowMs(), second));
        }
        mostWaiting = Math.max(mostWaiting, recorder.waiting());
        long leftNs = startNs + TimeUnit.SECONDS.toNanos(second) - System.nanoTime();
        if (leftNs > 0) {
          TimeUnit.NANOSECONDS.sleep(leftNs);
        } else {
          late++;
        }
      }
      System.out.printf(
          "%d sites: most readings waiting %d, at the end %d, late in %d of %d seconds%n",
          SITES, mostWaiting, recorder.waiting(), late, SECONDS);
    }
    System.out.println("database left in " + folder);
  }

  private static Delivery delivery(long timeMs, int second) {
    List<Reading> readings = new ArrayList<>(CHANNELS.size());
    for (Channel channel : CHANNELS) {
      readings.add(new Reading(channel, timeMs, 20 + 3 * Math.sin(second), false));
    }
    return Delivery.of(readings);
  }
}
