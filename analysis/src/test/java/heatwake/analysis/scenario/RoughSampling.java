package heatwake.analysis.scenario;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Makes a recording of a tidy one as loggers in the field leave it: some channels only, each at its
 * own pace between 1 and 120 s with jitter, silences, values that are no numbers, two readings of
 * one time (of which a recorder keeps the first), a single reading, none, or one value all along.
 */
final class RoughSampling {
  private static final double LONGEST_SILENCE_S = 1500;

  private final Random random;

  RoughSampling(Random random) {
    this.random = random;
  }

  Recording of(Recording tidy) {
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    double kept = 0.3 + 0.7 * random.nextDouble();
    boolean onePace = random.nextBoolean();
    double paceS = paceS();
    tidy.series()
        .forEach(
            (channel, one) -> {
              if (random.nextDouble() < kept) {
                series.put(channel, rough(one, onePace ? paceS : paceS()));
              }
            });
    return new Recording(
        tidy.run(), tidy.rig(), tidy.startMs(), tidy.endMs(), series, List.of(), List.of());
  }

  private double paceS() {
    return Math.rint(Math.exp(random.nextDouble() * Math.log(120)));
  }

  private Series rough(Series tidy, double paceS) {
    int kind = random.nextInt(20);
    if (kind == 0) {
      return Series.of(tidy.channel()).build();
    }
    if (kind == 1) {
      int r = random.nextInt(tidy.size());
      return Series.of(tidy.channel()).add(tidy.timeMs(r), tidy.value(r)).build();
    }
    double constant = kind == 2 ? tidy.value(random.nextInt(tidy.size())) : Double.NaN;
    double jitter = random.nextInt(3) == 0 ? 0 : random.nextDouble();
    double noNumbers = random.nextInt(4) == 0 ? 0.05 * random.nextDouble() : 0;
    List<long[]> silences = silences(tidy);
    Series.Builder rough = Series.of(tidy.channel());
    long lastMs = Long.MIN_VALUE;
    double atMs = tidy.timeMs(0) + 1000 * paceS * random.nextDouble();
    while (atMs < tidy.timeMs(tidy.size() - 1)) {
      int r = tidy.firstAtOrAfter((long) atMs);
      double value = Double.isNaN(constant) ? tidy.value(r) : constant;
      value = random.nextDouble() < noNumbers ? Double.NaN : value;
      long stampMs = (long) atMs;
      if (stampMs > lastMs && silences.stream().noneMatch(one -> within(one, stampMs))) {
        rough.add(stampMs, value);
        lastMs = stampMs;
      }
      // Now and then the same time again.
      atMs +=
          random.nextInt(50) == 0
              ? 0
              : 1000 * paceS * (1 + jitter * (2 * random.nextDouble() - 1) * 0.9);
    }
    return rough.build();
  }

  private List<long[]> silences(Series tidy) {
    List<long[]> silences = new ArrayList<>();
    while (random.nextInt(3) == 0) {
      long from = tidy.timeMs(random.nextInt(tidy.size()));
      silences.add(
          new long[] {from, from + (long) (1000 * LONGEST_SILENCE_S * random.nextDouble())});
    }
    return silences;
  }

  private static boolean within(long[] silence, long timeMs) {
    return timeMs >= silence[0] && timeMs < silence[1];
  }
}
