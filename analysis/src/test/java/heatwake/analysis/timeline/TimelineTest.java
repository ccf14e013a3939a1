package heatwake.analysis.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Readings placed on the grid, worked out by hand. */
class TimelineTest {
  private static final double CEL = 273.15;

  @Test
  void fastAndSlowProbesShareOneGrid() {
    Series.Builder fast = Series.of(Channel.WATER_IN);
    Series.Builder slow = Series.of(Channel.AIR_IN);
    for (int s = 0; s <= 600; s++) {
      fast.add(s * 1000L, CEL + 20 + s * 0.001);
      if (s % 60 == 0) {
        slow.add(s * 1000L, CEL + 10 + s / 60.0);
      }
    }
    Timeline timeline = timeline(600_000, fast, slow);
    assertThat(timeline.stepMs()).isEqualTo(1000);
    assertThat(timeline.size()).isEqualTo(601);
    assertThat(timeline.of(Channel.WATER_IN)[345]).isCloseTo(CEL + 20.345, within(1e-9));
    assertThat(timeline.of(Channel.AIR_IN)[345]).isCloseTo(CEL + 15.75, within(1e-9));
    assertThat(timeline.intervalInstants(Channel.AIR_IN)).isEqualTo(60);
  }

  @Test
  void silenceOfMoreThanThreeIntervalsStaysEmpty() {
    Series.Builder series = Series.of(Channel.WATER_IN);
    for (int s = 0; s < 300; s++) {
      boolean shortGap = s > 100 && s < 103;
      boolean longGap = s > 200 && s < 210;
      if (!shortGap && !longGap) {
        series.add(s * 1000L, CEL + s * 0.01);
      }
    }
    double[] values = timeline(299_000, series).of(Channel.WATER_IN);
    assertThat(values[101]).isCloseTo(CEL + 1.01, within(1e-9));
    assertThat(values[200]).isCloseTo(CEL + 2.00, within(1e-9));
    assertThat(values[201]).isNaN();
    assertThat(values[209]).isNaN();
    assertThat(values[210]).isCloseTo(CEL + 2.10, within(1e-9));
  }

  /** A value that is sent when it has moved by 5 W, while another is heard throughout. */
  @Test
  void aValueWithADeadBandIsHeldUntilItIsSentAgain() {
    Series.Builder power = Series.of(Channel.POWER);
    Series.Builder water = Series.of(Channel.WATER_IN);
    for (int s = 0; s < 2000; s++) {
      water.add(s * 1000L, CEL + 26);
      boolean rests = s >= 1000 && s < 1400;
      if (s == 1000 || !rests) {
        // Whole steps of the band and more, never less.
        power.add(s * 1000L, rests ? 30 : 2000 + 5 * (s % 2) + 7 * (s % 3));
      }
    }
    Timeline timeline = timeline(1_999_000, power, water);
    assertThat(timeline.of(Channel.POWER)[1001]).isEqualTo(30);
    assertThat(timeline.of(Channel.POWER)[1399]).isEqualTo(30);
    assertThat(timeline.of(Channel.POWER)[1400]).isGreaterThan(1999);
    // Where nothing is heard meanwhile the logger may have been dead.
    assertThat(timeline(1_999_000, power).of(Channel.POWER)[1200]).isNaN();
  }

  @Test
  void readingsFasterThanTheGridAreAveraged() {
    Series.Builder series = Series.of(Channel.POWER);
    for (int k = 0; k < 1000; k++) {
      series.add(k * 100L, k % 10 < 5 ? 1000 : 2000);
    }
    double[] values = timeline(99_900, series).of(Channel.POWER);
    assertThat(values[50]).isCloseTo(1500, within(1e-9));
  }

  @Test
  void stateSentOnChangeIsHeldToTheEnd() {
    Series.Builder pump = Series.of(Channel.PUMP_ON).add(10_000, 1).add(400_000, 0);
    Series.Builder power = Series.of(Channel.POWER);
    for (int s = 0; s <= 900; s++) {
      power.add(s * 1000L, 10);
    }
    double[] on = timeline(900_000, pump, power).of(Channel.PUMP_ON);
    assertThat(on[9]).isNaN();
    assertThat(on[10]).isEqualTo(1);
    assertThat(on[399]).isEqualTo(1);
    assertThat(on[400]).isZero();
    assertThat(on[900]).isZero();
  }

  @Test
  void pacedStateThatFallsSilentIsNotHeld() {
    Series.Builder pump = Series.of(Channel.PUMP_ON);
    for (int s = 0; s <= 100; s++) {
      pump.add(s * 1000L, 1);
    }
    Series.Builder power = Series.of(Channel.POWER);
    for (int s = 0; s <= 900; s++) {
      power.add(s * 1000L, 10);
    }
    double[] on = timeline(900_000, pump, power).of(Channel.PUMP_ON);
    assertThat(on[100]).isEqualTo(1);
    assertThat(on[200]).isNaN();
  }

  @Test
  void burstsAreNotThePaceOfAProbe() {
    Series.Builder series = Series.of(Channel.WATER_IN);
    for (int m = 0; m < 30; m++) {
      series.add(m * 60_000L, CEL + 20);
      series.add(m * 60_000L + 10, CEL + 20);
    }
    Timeline timeline = timeline(29 * 60_000, series);
    assertThat(timeline.intervalMs(Channel.WATER_IN)).isCloseTo(60_000, within(20L));
    assertThat(timeline.of(Channel.WATER_IN)).doesNotContain(Double.NaN);
  }

  @Test
  void impossibleReadingsAreLeftOut() {
    Series.Builder series = Series.of(Channel.WATER_IN);
    for (int s = 0; s < 60; s++) {
      series.add(s * 1000L, s == 30 ? CEL - 127 : CEL + 20);
    }
    assertThat(timeline(59_000, series).of(Channel.WATER_IN)[30]).isCloseTo(CEL + 20, within(1e-9));
  }

  @Test
  void aLoneReadingSpeaksForItsInstant() {
    Series.Builder lone = Series.of(Channel.AIR_AMBIENT).add(30_400, CEL + 15);
    Series.Builder power = Series.of(Channel.POWER);
    for (int s = 0; s <= 60; s++) {
      power.add(s * 1000L, 10);
    }
    double[] air = timeline(60_000, lone, power).of(Channel.AIR_AMBIENT);
    assertThat(air[30]).isCloseTo(CEL + 15, within(1e-9));
    assertThat(air[31]).isNaN();
  }

  private static Timeline timeline(long endMs, Series.Builder... builders) {
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    for (Series.Builder builder : builders) {
      Series one = builder.build();
      series.put(one.channel(), one);
    }
    return Timeline.of(new Recording(1, Rigs.bare(), 0, endMs, series, List.of(), List.of()));
  }
}
