package heatwake.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.Rig;
import org.junit.jupiter.api.Test;

class ConditionsTest {
  private static final AbsolutePressure SEA_LEVEL = AbsolutePressure.STANDARD_ATMOSPHERE;

  private final Rig rig = Rigs.typical();

  /**
   * Saturation pressure is 3.5674 kPa at 27 Cel and 6.9970 kPa at 39 Cel (ASHRAE Handbook,
   * Fundamentals, table of water at saturation, from memory).
   */
  @Test
  void hotAirIsAssumedToHoldNoMoreVapourThanWarmAir() {
    double warm = Conditions.assumedHumidity(rig, 273.15 + 27);
    double hot = Conditions.assumedHumidity(rig, 273.15 + 39);
    assertThat(warm).isEqualTo(Conditions.ratedHumidity(rig));
    assertThat(hot / warm).isCloseTo(3.5674 / 6.9970, within(0.001));
    assertThat(Conditions.assumedHumidity(rig, 273.15 + 5)).isEqualTo(warm);
  }

  /** A wet bulb above 31 Cel has hardly ever been measured outdoors (from memory). */
  @Test
  void noAssumedAirIsWetterThanAirCanBe() {
    for (double cel = -20; cel <= 50; cel++) {
      double airK = 273.15 + cel;
      double humidity = Conditions.assumedHumidity(rig, airK);
      assertThat(MoistAir.of(airK, humidity, SEA_LEVEL).wetBulbK()).isLessThan(273.15 + 31);
    }
  }
}
