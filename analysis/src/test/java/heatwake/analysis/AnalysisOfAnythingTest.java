package heatwake.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Rig;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings never make an analysis fail, however absurd; figures stay numbers. */
class AnalysisOfAnythingTest {
  private static final int RUNS = 100;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void givesFindingsForAnyReadings(long seed) {
    Random random = new Random(seed);
    for (int run = 0; run < RUNS; run++) {
      Rig rig = random.nextBoolean() ? Rigs.typical() : Rigs.bare();
      Findings findings = Analysis.of(anything(random, rig));
      findings.heat().deliveredJ().ifPresent(heat -> assertThat(heat.value()).isFinite());
      findings.heat().cop().ifPresent(cop -> assertThat(cop.standard()).isFinite());
      findings.steady().forEach(span -> assertThat(span.endMs()).isGreaterThan(span.startMs()));
      assertThat(findings.missing()).doesNotHaveDuplicates();
    }
  }

  private static Recording anything(Random random, Rig rig) {
    long lengthMs = 1 + (long) (random.nextDouble() * random.nextDouble() * 8 * 3_600_000);
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      if (random.nextInt(3) > 0) {
        series.put(channel, series(random, channel, lengthMs));
      }
    }
    return new Recording(1, rig, 0, lengthMs, series, List.of(), List.of());
  }

  /** Levels that hold for a while, noise, silences, spikes and impossible values. */
  private static Series series(Random random, Channel channel, long lengthMs) {
    Series.Builder readings = Series.of(channel);
    double pace = Math.pow(10, 2.7 + 2.5 * random.nextDouble());
    double level = level(random, channel);
    for (double at = pace * random.nextDouble(); at < lengthMs; ) {
      if (random.nextInt(200) == 0) {
        level = level(random, channel);
      }
      double value = level * (1 + 0.01 * random.nextGaussian());
      if (random.nextInt(300) == 0) {
        value = random.nextBoolean() ? -1e9 : Double.NaN;
      }
      readings.add((long) at, channel.storedUnit().toSi(value));
      at += 1 + pace * (random.nextInt(100) == 0 ? 50 * random.nextDouble() : 1);
    }
    return readings.build();
  }

  private static double level(Random random, Channel channel) {
    double spread = random.nextDouble();
    return switch (channel.quantity()) {
      case TEMPERATURE -> -20 + 90 * spread;
      case FLOW -> 300 * spread * random.nextInt(2);
      case PRESSURE -> 4000 * spread;
      case POWER -> 5000 * spread * random.nextInt(2);
      case RATIO -> 105 * spread;
      case ENERGY -> 1e5 * spread;
      case STATE -> random.nextInt(2);
      default -> 250 * spread;
    };
  }
}
