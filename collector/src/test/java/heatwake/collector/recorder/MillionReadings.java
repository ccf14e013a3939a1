package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;

/**
 * A recorder in a process of its own that records a million readings, and odd things from as many
 * different subjects as it can be told of; says after each hundred thousand how much memory is in
 * use once what is unused was freed.
 */
final class MillionReadings {
  private static final int STEPS = 10;
  private static final int PER_STEP = 100_000;
  private static final int CHANNELS = 10;

  private MillionReadings() {}

  public static void main(String[] arguments) throws InterruptedException {
    RigFile rig = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");
    try (Recorder recorder = Recorder.open(Path.of(arguments[0]), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(rig);
      long timeMs = System.currentTimeMillis() - STEPS * PER_STEP;
      for (int step = 0; step < STEPS; step++) {
        for (int i = 0; i < PER_STEP / CHANNELS; i++) {
          run.deliver(Delivery.of(readings(timeMs++)));
          run.happened(EventKind.UNREADABLE, "source " + timeMs, "line \"" + timeMs + "\"");
        }
        // Twice: while the first acknowledges, the writer still holds the whole commit it was in.
        awaitStored(run, timeMs++);
        awaitStored(run, timeMs++);
        System.gc();
        Runtime memory = Runtime.getRuntime();
        System.out.println(memory.totalMemory() - memory.freeMemory());
      }
    }
  }

  private static void awaitStored(RecordedRun run, long timeMs) throws InterruptedException {
    CountDownLatch safe = new CountDownLatch(1);
    run.deliver(new Delivery(readings(timeMs), safe::countDown));
    safe.await();
  }

  private static List<Reading> readings(long timeMs) {
    List<Reading> readings = new ArrayList<>();
    for (Channel channel : List.of(Channel.values()).subList(0, CHANNELS)) {
      readings.add(new Reading(channel, timeMs, 20, true));
    }
    return readings;
  }
}
