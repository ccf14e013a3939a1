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
  void runsOverTheEndOfSixteenBits() {
    // 65 536 steps of 0.01 kWh are 655.36: 0.02 to the end, and 0.03 after it.
    assertThat(used(655.29, 655.34, 0.03, 0.08)).isCloseTo(0.15, within(1e-6));
  }

  @Test
  void isReplacedByAnotherMeter() {
    // 100 kW for a minute are 1.67 kWh: neither 31.4 kWh nor a leap to 8000 was taken meanwhile.
    assertThat(used(512.00, 512.05, 31.40, 31.45)).isCloseTo(0.10, within(1e-9));
    assertThat(used(512.00, 512.05, 8000.1, 8000.15)).isCloseTo(0.10, within(1e-9));
  }

  @Test
  void dropsALeapThatComesBack() {
    assertThat(used(512.00, 512.05, 99_999.9, 512.15)).isCloseTo(0.15, within(1e-9));
  }

  @Test
  void knowsItsStep() {
    assertThat(counter(10, 10.1, 10.3, 10.4).stepJ() / 3.6e6).isCloseTo(0.1, within(1e-9));
    // Differences of 4 and 5 hundredths have one hundredth in common.
    assertThat(counter(10, 10.04, 10.09, 10.13).stepJ() / 3.6e6).isCloseTo(0.01, within(1e-9));
    assertThat(counter(10, 10, 10).stepJ()).isZero();
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
