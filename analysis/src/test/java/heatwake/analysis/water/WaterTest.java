package heatwake.analysis.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.hummeling.if97.IF97;
import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.reference.ReferenceTable;
import heatwake.analysis.reference.WorstDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference: IAPWS R7-97(2012), EN 1434-1 / OIML R 75, an IF97 library by others. */
class WaterTest {
  /** IAPWS R7-97(2012), table 5. Nine printed digits. */
  @ParameterizedTest
  @CsvSource({
    "300, 3e6, 0.100215168e-2, 115.331273, 4.17301218",
    "300, 80e6, 0.971180894e-3, 184.142828, 4.01008987",
    "500, 3e6, 0.120241800e-2, 975.542239, 4.65580682"
  })
  void verificationTable5(double tK, double pPa, double vM3PerKg, double hKj, double cpKj) {
    assertThat(1 / Water.densityKgPerM3(tK, pPa)).isCloseTo(vM3PerKg, within(1e-8 * vM3PerKg));
    assertThat(Water.enthalpyJPerKg(tK, pPa) / 1e3).isCloseTo(hKj, within(5e-9 * hKj));
    assertThat(Water.cpJPerKgK(tK, pPa) / 1e3).isCloseTo(cpKj, within(5e-9 * cpKj));
  }

  /** IAPWS R7-97(2012), tables 35 and 36. */
  @Test
  void saturationVerificationTables35And36() {
    assertThat(Water.saturationPressurePa(300)).isCloseTo(3536.58941, within(1e-5));
    assertThat(Water.saturationPressurePa(500)).isCloseTo(2.63889776e6, within(1e-2));
    assertThat(Water.saturationPressurePa(600)).isCloseTo(12.3443146e6, within(1e-1));
    assertThat(Water.saturationTemperatureK(0.1e6)).isCloseTo(372.755919, within(1e-6));
    assertThat(Water.saturationTemperatureK(1e6)).isCloseTo(453.035632, within(1e-6));
    assertThat(Water.saturationTemperatureK(10e6)).isCloseTo(584.149488, within(1e-6));
  }

  /** Table of IF97 at 0.1 MPa and 1 atm, 0 to 50 Cel (independent code), and IAPWS-95 beside it. */
  @Test
  void densityAndSpecificHeatTables() {
    var rho = new WorstDeviation("IF97 density against table", "kg/m3");
    var cp = new WorstDeviation("IF97 cp against table", "kJ/(kg K)");
    var h = new WorstDeviation("IF97 enthalpy against table", "kJ/kg");
    var rho95 = new WorstDeviation("IF97 density against IAPWS-95", "kg/m3");
    var rhoSr6 = new WorstDeviation("IF97 density against IAPWS SR6-08", "kg/m3");
    var rhoKell = new WorstDeviation("IF97 density against Kell 1975", "kg/m3");
    var cp95 = new WorstDeviation("IF97 cp against IAPWS-95", "kJ/(kg K)");
    var cpSr6 = new WorstDeviation("IF97 cp against IAPWS SR6-08", "kJ/(kg K)");
    for (var row : ReferenceTable.read("water/water_density_cp.csv")) {
      double tK = 273.15 + row.number("t_C");
      String at = row.text("t_C") + " Cel";
      double density = Water.densityKgPerM3(tK, 1e5);
      double heat = Water.cpJPerKgK(tK, 1e5) / 1e3;
      rho.add(density, row.number("rho_IF97_0.1MPa"), at);
      rho.add(Water.densityKgPerM3(tK, 101325), row.number("rho_IF97_101325Pa"), at);
      rho95.add(density, row.number("rho_IAPWS95_0.1MPa"), at);
      rhoSr6.add(density, row.number("rho_SR6-08_0.1MPa"), at);
      rhoKell.add(Water.densityKgPerM3(tK, 101325), row.number("rho_Kell1975_1atm"), at);
      cp.add(heat, row.number("cp_IF97_0.1MPa"), at);
      cp.add(Water.cpJPerKgK(tK, 101325) / 1e3, row.number("cp_IF97_101325Pa"), at);
      cp95.add(heat, row.number("cp_IAPWS95_0.1MPa"), at);
      cpSr6.add(heat, row.number("cp_SR6-08_0.1MPa"), at);
      h.add(Water.enthalpyJPerKg(tK, 1e5) / 1e3, row.number("h_IF97_0.1MPa"), at);
      h.add(Water.enthalpyJPerKg(tK, 101325) / 1e3, row.number("h_IF97_101325Pa"), at);
    }
    // Half of the last digit printed.
    rho.assertWithin(0.000051);
    cp.assertWithin(0.0000051);
    h.assertWithin(0.0000051);
    // Between formulations: IAPWS-95 is the scientific one, IF97 the industrial.
    rho95.assertWithin(0.02);
    rhoSr6.assertWithin(0.02);
    rhoKell.assertWithin(0.02);
    cp95.assertWithin(0.002);
    cpSr6.assertWithin(0.002);
  }

  /** Conventional true energy per 0.1 m3 by EN 1434-1:2007 / OIML R 75:2002, at 16 bar. */
  @Test
  void conventionalTrueEnergyOfTheHeatMeterStandards() {
    var published = new WorstDeviation("heat coefficient against the published energies", "Wh");
    var computed = new WorstDeviation("heat coefficient against independent IF97 code", "Wh");
    for (var row : ReferenceTable.read("water/heat_meter_conventional_true_energy.csv")) {
      double hotK = 273.15 + row.number("t_hot_C");
      double coldK = 273.15 + row.number("t_cold_C");
      double perK = 0.1 / 3600 * (hotK - coldK);
      double meterHot = Water.heatCoefficientJPerM3K(hotK, coldK, hotK, 1.6e6) * perK;
      double meterCold = Water.heatCoefficientJPerM3K(hotK, coldK, coldK, 1.6e6) * perK;
      String at = row.text("t_hot_C") + "/" + row.text("t_cold_C");
      published.add(meterHot, row.number("published_Wh_per_0.1m3_meter_in_hot"), at);
      published.add(meterCold, row.number("published_Wh_per_0.1m3_meter_in_cold"), at);
      computed.add(meterHot, row.number("IF97_1.6MPa_hot"), at);
      computed.add(meterCold, row.number("IF97_1.6MPa_cold"), at);
    }
    published.assertWithin(0.0051);
    computed.assertWithin(0.00051);
  }

  @Test
  void heatCoefficientTables() {
    var exact = new WorstDeviation("heat coefficient, equations, against table", "MJ/(m3 K)");
    var quick = new WorstDeviation("heat coefficient, polynomials, against table", "MJ/(m3 K)");
    for (var row : ReferenceTable.read("water/heat_coefficient_k.csv")) {
      double hotK = 273.15 + row.number("t_hot_C");
      double coldK = 273.15 + row.number("t_cold_C");
      double pPa = row.number("p_MPa") * 1e6;
      double inHot = row.number("k_meter_in_hot_pipe_MJ_m3K");
      double inCold = row.number("k_meter_in_cold_pipe_MJ_m3K");
      String at = row.text("t_hot_C") + "/" + row.text("t_cold_C") + " at " + row.text("p_MPa");
      exact.add(Water.heatCoefficientJPerM3K(hotK, coldK, hotK, pPa) / 1e6, inHot, at);
      exact.add(Water.heatCoefficientJPerM3K(hotK, coldK, coldK, pPa) / 1e6, inCold, at);
      if (PoolWater.covers(hotK)) {
        PoolWater water = PoolWater.of(0, pPa);
        quick.add(water.heatCoefficientJPerM3K(hotK, coldK, hotK) / 1e6, inHot, at);
        quick.add(water.heatCoefficientJPerM3K(hotK, coldK, coldK) / 1e6, inCold, at);
      }
    }
    exact.assertWithin(0.0000051);
    quick.assertWithin(0.00001);
  }

  @Test
  void heatCoefficientOfEqualTemperaturesIsDensityTimesSpecificHeat() {
    double near = Water.heatCoefficientJPerM3K(300.001, 299.999, 300, 1e5);
    assertThat(Water.heatCoefficientJPerM3K(300, 300, 300, 1e5))
        .isCloseTo(near, within(1e-6 * near));
  }

  /** The general-purpose library over the pools of this world: 5 to 40 Cel, rises 0.5 to 10 K. */
  @Test
  void heatAgreesWithAnIndependentLibrary() throws Exception {
    IF97 library = new IF97(IF97.UnitSystem.SI);
    var equations = new WorstDeviation("heat, equations, against the IF97 library", "relative");
    var polynomials = new WorstDeviation("heat, polynomials, against the IF97 library", "relative");
    for (double pPa : new double[] {80e3, 101325, 200e3, 400e3}) {
      PoolWater water = PoolWater.of(0, pPa);
      for (double inCel = 5; inCel <= 40; inCel += 1.25) {
        for (double riseK = 0.5; riseK <= 10; riseK += 0.5) {
          double inK = 273.15 + inCel;
          double outK = inK + riseK;
          double density = library.densityPT(pPa, inK);
          double heatW =
              3e-3
                  * density
                  * (library.specificEnthalpyPT(pPa, outK) - library.specificEnthalpyPT(pPa, inK));
          String at = inCel + " Cel, " + riseK + " K, " + pPa + " Pa";
          equations.addRelative(
              3e-3 * riseK * Water.heatCoefficientJPerM3K(outK, inK, inK, pPa), heatW, at);
          polynomials.addRelative(water.heatW(3e-3, inK, inK, outK), heatW, at);
        }
      }
    }
    equations.assertWithin(1e-9);
    polynomials.assertWithin(1e-6);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "263.15 | 101325 | water temperature 263.15 K is outside 273.15 to 623.15 K (liquid water"
            + " only)",
        "700 | 101325 | water temperature 700 K is outside 273.15 to 623.15 K (liquid water only)",
        "NaN | 101325 | water temperature NaN K is outside 273.15 to 623.15 K (liquid water only)",
        "293.15 | -5 | absolute water pressure -5 Pa is outside 2339.21 to 100000000 Pa (steam"
            + " below)",
        "400 | 101325 | absolute water pressure 101325 Pa is outside 245753 to 100000000 Pa"
            + " (steam below)",
        "300 | 2e8 | absolute water pressure 200000000 Pa is outside 3536.59 to 100000000 Pa"
            + " (steam below)"
      })
  void namesValueUnitAndRangeOfWhatIsNotLiquid(double tK, double pPa, String message) {
    assertThatThrownBy(() -> Water.enthalpyJPerKg(tK, pPa))
        .isInstanceOf(OutOfRangeException.class)
        .hasMessage(message);
    assertThatThrownBy(() -> Water.densityKgPerM3(tK, pPa)).isInstanceOf(OutOfRangeException.class);
    assertThatThrownBy(() -> Water.cpJPerKgK(tK, pPa)).isInstanceOf(OutOfRangeException.class);
  }
}
