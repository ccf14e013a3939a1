package heatwake.analysis.rule.airflow;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The last hour of a stretch against its best. */
class LastingIceTest {
  private static final double NIGHT_S = 8 * 3600;

  @Test
  void aCoilThatFallsAwayWithItsHeatAllNightIsIced() {
    assertThat(new LastingIce(0.82, 0.5, 6.3, 1).shows(NIGHT_S)).isTrue();
  }

  /** 2.5 % for each kelvin of air, and the coil goes with it: common practice. */
  @Test
  void aNightThatGrowsColderTakesAsMuchHeatWithoutIce() {
    assertThat(new LastingIce(0.80, 8, 7, 1).shows(NIGHT_S)).isFalse();
    assertThat(new LastingIce(0.80, 4, 10, 1).shows(NIGHT_S)).isFalse();
  }

  @Test
  void sunOnTheProbeOfTheAirMakesNoIce() {
    assertThat(new LastingIce(0.99, -6, 0, 1).shows(NIGHT_S)).isFalse();
  }

  @Test
  void warmerWaterTakesSomeHeatButLeavesTheCoil() {
    assertThat(new LastingIce(0.85, 0, -0.5, 1.1).shows(NIGHT_S)).isFalse();
  }

  @Test
  void aCompressorThatSlowsDownOrWhosePowerIsNotKnownIsNotAccused() {
    assertThat(new LastingIce(0.8, 0, 6, 0.9).shows(NIGHT_S)).isFalse();
    assertThat(new LastingIce(0.8, 0, 6, Double.NaN).shows(NIGHT_S)).isFalse();
  }

  @Test
  void aSoundControlMayBeAboutToDefrostAfterTwoHours() {
    assertThat(new LastingIce(0.82, 0, 6, 1).shows(2 * 3600)).isFalse();
    assertThat(new LastingIce(0.9, 0, 6, 1).shows(NIGHT_S)).isFalse();
    assertThat(new LastingIce(0.82, 0, 4.5, 1).shows(NIGHT_S)).isFalse();
  }
}
