package heatwake.analysis.electric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Registers of constant and of changing power, worked out by hand. */
class CountedPowerTest {
  private static final double J_PER_KWH = 3.6e6;

  @ParameterizedTest(name = "steps of {0} kWh every {1} s")
  @CsvSource({"0.1,1", "0.1,60", "0.01,10", "0.001,1", "0.001,60"})
  void aConstantPowerIsThatPower(double stepKWh, int everyS) {
    CountedPower counted = counted(stepKWh, everyS, 7200, atS -> 2000 * atS);

    assertThat(counted.stepJ()).isCloseTo(stepKWh * J_PER_KWH, within(1.0));
    double[] power = counted.powerW();
    // Half a step at either end of two hours and 4 kWh.
    double openShare = stepKWh / 4;
    for (int i = power.length / 4; i < power.length / 2; i++) {
      assertThat(power[i]).isCloseTo(2000, within(2000 * openShare + 1));
    }
  }

  @Test
  void whatIsSureHoldsTheTruth() {
    // Rest for an hour, then 3 kW.
    DoubleUnaryOperator truth = atS -> 3000 * Math.max(0, atS - 3600);
    CountedPower counted = counted(0.1, 10, 7200, truth);
    for (int from = 5; from < 700; from += 31) {
      for (int to = from + 3; to < 715; to += 47) {
        double used = truth.applyAsDouble(to * 10) - truth.applyAsDouble(from * 10);
        assertThat(counted.leastJ(from, to)).isLessThanOrEqualTo(used + 1);
        assertThat(counted.mostJ(from, to)).isGreaterThanOrEqualTo(used - 1);
      }
    }
    assertThat(counted.mostJ(0, 350)).isCloseTo(0.1 * J_PER_KWH, within(1.0));
  }

  @Test
  void isOpenInASilenceAndBeyond() {
    Series.Builder series = Series.of(Channel.ENERGY);
    for (int s = 100; s < 2000; s += 10) {
      if (s < 500 || s > 900) {
        series.add(s * 1000L, Math.floor(2000.0 * s / 36_000) * 36_000);
      }
    }
    CountedPower counted = counted(series.build(), 2100);
    assertThat(counted.powerW()[3]).isNaN();
    assertThat(counted.powerW()[70]).isNaN();
    assertThat(counted.powerW()[150]).isCloseTo(2000, within(100.0));
    assertThat(counted.powerW()[205]).isNaN();
    assertThat(counted.mostJ(2, 150)).isInfinite();
  }

  private static CountedPower counted(
      double stepKWh, int everyS, int lengthS, DoubleUnaryOperator energyJ) {
    double stepJ = stepKWh * J_PER_KWH;
    Series.Builder series = Series.of(Channel.ENERGY);
    for (int s = 0; s <= lengthS; s += everyS) {
      series.add(s * 1000L, Math.floor(energyJ.applyAsDouble(s) / stepJ + 1e-9) * stepJ);
    }
    return counted(series.build(), lengthS);
  }

  private static CountedPower counted(Series series, int lengthS) {
    Recording recording =
        new Recording(
            1,
            Rigs.bare(),
            0,
            lengthS * 1000L,
            Map.of(Channel.ENERGY, series),
            List.of(),
            List.of());
    return CountedPower.of(recording, Timeline.of(recording)).orElseThrow();
  }
}
