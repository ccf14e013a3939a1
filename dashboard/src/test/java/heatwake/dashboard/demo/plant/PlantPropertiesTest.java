package heatwake.dashboard.demo.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.water.PoolWater;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The plant's own properties of air and water against published tables. */
class PlantPropertiesTest {
  /** ASHRAE Handbook Fundamentals 2017, chapter 1, table 3, Pa. */
  @ParameterizedTest
  @CsvSource({"-20, 103.24", "-5, 401.74", "5, 872.6", "25, 3169.7", "50, 12351.3"})
  void vapourPressure(double celsius, double pascal) {
    assertThat(MoistAir.saturationPa(celsius)).isCloseTo(pascal, withinPercentage(0.2));
  }

  /** ASHRAE Handbook Fundamentals 2017, chapter 1, table 2, saturated air, J/kg. */
  @ParameterizedTest
  @CsvSource({"5, 18639", "25, 76504"})
  void enthalpyOfSaturatedAir(double celsius, double joulePerKg) {
    assertThat(MoistAir.saturatedEnthalpy(celsius, 101_325))
        .isCloseTo(joulePerKg, withinPercentage(0.7));
  }

  /** IAPWS-95 at 0.1 MPa, computed with python3-iapws 1.5.3: kg/m3 and J/(kg K). */
  @ParameterizedTest
  @CsvSource({
    "10, 999.7018, 4195.16",
    "25, 997.0470, 4181.32",
    "30, 995.6489, 4179.82",
    "40, 992.2158, 4179.42"
  })
  void water(double celsius, double density, double heat) {
    assertThat(PoolWater.density(celsius)).isCloseTo(density, withinPercentage(0.001));
    assertThat(PoolWater.heat(celsius)).isCloseTo(heat, withinPercentage(0.01));
  }
}
