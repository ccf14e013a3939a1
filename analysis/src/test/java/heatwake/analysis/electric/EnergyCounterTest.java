package heatwake.analysis.electric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Series;
import org.junit.jupiter.api.Test;

/** Registers worked out by hand; a reading every minute, in kWh. */
class EnergyCounterTest {
  @Test
  void runsOn() {
    assertThat(used(10.0, 10.05, 10.10)).isCloseTo(0.10, within(1e-9));
  }

  @Test
  void rollsOver() {
    // 99 999.98 to 100 000 is 0.02, and 0.03 after it.
    assertThat(used(99_999.95, 99_999.98, 0.03, 0.08)).isCloseTo(0.13, within(1e-6));
  }

  @Test
  void isReset() {
    // What the meter counted between its last reading and the reset is lost, not invented.
    assertThat(used(512.00, 512.05, 0.01, 0.06)).isCloseTo(0.11, within(1e-9));
  }

  @Test
  void dropsAGlitch() {
    assertThat(used(512.00, 512.05, 0.0, 512.15)).isCloseTo(0.15, within(1e-9));
  }

  @Test
  void givesMeanPowerBetweenReadings() {
    double[] power = counter(10.0, 10.05, 10.15).powerW(0, 30_000, 6);
    assertThat(power[0]).isCloseTo(3000, within(1e-6));
    assertThat(power[3]).isCloseTo(6000, within(1e-6));
    assertThat(power[4]).isNaN();
  }

  @Test
  void coarseStepsWidenTheEdges() {
    assertThat(counter(10, 10, 10, 10.1, 10.1, 10.1, 10.2).edgeJ() / 3.6e6)
        .isCloseTo(0.1 / Math.sqrt(12), within(1e-9));
  }

  private static double used(double... kWh) {
    return counter(kWh).usedJ() / 3.6e6;
  }

  private static EnergyCounter counter(double... kWh) {
    Series.Builder series = Series.of(Channel.ENERGY);
    for (int i = 0; i < kWh.length; i++) {
      series.add(i * 60_000L, kWh[i] * 3.6e6);
    }
    return EnergyCounter.of(series.build());
  }
}
