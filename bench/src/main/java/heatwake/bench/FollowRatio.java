package heatwake.bench;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.RunFollower;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Processor time of a look at a growing run, read as a whole and followed, in turns in one process:
 * 12 channels at 1 Hz over 14 hours, three new seconds between two looks.
 */
public final class FollowRatio {
  private static final long START_MS = 1_935_684_000_000L;
  private static final int CHANNELS = 12;
  private static final int SECONDS = 50_000;
  private static final int WARM_UP = 15;
  private static final int TURNS = 60;

  private FollowRatio() {}

  /** Prints medians and ratios. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createTempDirectory("heatwake-follow");
    Path file = folder.resolve("night.db");
    try (Store writer = Store.open(file);
        Store reader = Store.open(file)) {
      long run =
          writer.beginRun(RigReader.parse("[site]\nname = \"bench\"\n", "rig.toml"), START_MS);
      Random random = new Random(7);
      for (int from = 0; from < SECONDS; from += 2500) {
        writer.append(run, readings(from, from + 2500, 0, random));
      }
      RunFollower follower = reader.follow(run);
      follower.read();
      List<double[]> turns = new ArrayList<>();
      int second = SECONDS;
      for (int i = 0; i < WARM_UP + TURNS; i++) {
        writer.append(run, readings(second, second + 3, 0, random));
        second += 3;
        double whole = ms(() -> reader.load(run));
        double followed = ms(follower::read);
        // An hour late: the last hour is read again.
        writer.append(run, readings(second - 3600, second - 3599, 1 + i, random));
        double late = ms(follower::read);
        if (i >= WARM_UP) {
          turns.add(new double[] {whole, followed, late, followed / whole, late / whole});
        }
      }
      String[] names = {
        "whole, ms", "followed, ms", "followed, an hour late, ms", "ratio", "ratio, an hour late"
      };
      for (int column = 0; column < names.length; column++) {
        int at = column;
        double[] sorted = turns.stream().mapToDouble(one -> one[at]).sorted().toArray();
        System.out.printf(
            "%-28s median %.4g, middle half %.4g to %.4g%n",
            names[column],
            sorted[sorted.length / 2],
            sorted[sorted.length / 4],
            sorted[sorted.length * 3 / 4]);
      }
    }
    try (var files = Files.list(folder)) {
      for (Path one : files.toList()) {
        Files.delete(one);
      }
    }
    Files.delete(folder);
  }

  private static List<Reading> readings(int from, int to, int offsetMs, Random random) {
    List<Reading> readings = new ArrayList<>();
    for (int s = from; s < to; s++) {
      for (Channel channel : Arrays.asList(Channel.values()).subList(0, CHANNELS)) {
        readings.add(
            new Reading(
                channel, START_MS + s * 1000L + offsetMs, 20 + random.nextGaussian(), true));
      }
    }
    return readings;
  }

  private static double ms(Runnable work) {
    ThreadMXBean clock = ManagementFactory.getThreadMXBean();
    long began = clock.getCurrentThreadCpuTime();
    work.run();
    return (clock.getCurrentThreadCpuTime() - began) / 1e6;
  }
}
