package heatwake.analysis.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.reference.ReferenceTable;
import heatwake.analysis.reference.WorstDeviation;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Reference: psychrolib 1.1.1 tables, and the ASHRAE Handbook's own (Fundamentals 2017, ch. 1). */
class MoistAirTest {
  private static final double ICE_POINT_K = 273.15;
  private static final AbsolutePressure SEA_LEVEL = AbsolutePressure.STANDARD_ATMOSPHERE;

  @Test
  void saturationPressureTable() {
    var worst = new WorstDeviation("moist air saturation pressure", "Pa");
    for (var row : ReferenceTable.read("air/moist_air_psat.csv")) {
      worst.add(
          MoistAir.saturationPressurePa(ICE_POINT_K + row.number("t_C")),
          row.number("pws_Pa"),
          row.text("t_C") + " Cel");
    }
    worst.assertWithin(0.000051);
  }

  /** Handbook table 3, which is of a later formulation: within 300 ppm except at -60 Cel. */
  @Test
  void saturationPressuresPrintedInTheHandbook() {
    double[][] celPa = {
      {-20, 103.24},
      {-5, 401.74},
      {5, 872.6},
      {25, 3169.7},
      {50, 12351.3},
      {100, 101418.0},
      {150, 476101.4}
    };
    var worst = new WorstDeviation("saturation pressure against Handbook table 3", "relative");
    for (double[] row : celPa) {
      worst.addRelative(
          MoistAir.saturationPressurePa(ICE_POINT_K + row[0]), row[1], row[0] + " Cel");
    }
    worst.assertWithin(3e-4);
    assertThat(MoistAir.saturationPressurePa(ICE_POINT_K - 60)).isCloseTo(1.08, within(0.01));
  }

  /**
   * Handbook table 2, real gas: the perfect-gas equations stay within 0.5 % at 25, 1 % at 50 Cel.
   */
  @Test
  void saturatedAirPrintedInTheHandbook() {
    double[][] celRatio = {{-20, 0.0006373}, {-5, 0.0024863}, {5, 0.005425}, {25, 0.020173}};
    var ratio = new WorstDeviation("saturated humidity ratio against Handbook table 2", "relative");
    for (double[] row : celRatio) {
      ratio.addRelative(saturated(row[0]).humidityRatio(), row[1], row[0] + " Cel");
    }
    ratio.assertWithin(5e-3);
    assertThat(saturated(50).humidityRatio()).isCloseTo(0.086863, within(0.01 * 0.086863));
    double[][] celJ = {{-20, -18542}, {5, 18639}, {25, 76504}};
    var enthalpy = new WorstDeviation("saturated enthalpy against Handbook table 2", "J/kg");
    for (double[] row : celJ) {
      enthalpy.add(saturated(row[0]).enthalpyJPerKgDryAir(), row[1], row[0] + " Cel");
    }
    enthalpy.assertWithin(0.005 * 76504);
    MoistAir dry = MoistAir.of(ICE_POINT_K + 25, 0, SEA_LEVEL);
    assertThat(dry.enthalpyJPerKgDryAir()).isCloseTo(25148, within(10.0));
    assertThat(dry.volumeM3PerKgDryAir()).isCloseTo(0.8443, within(0.0005));
  }

  private static MoistAir saturated(double cel) {
    return MoistAir.of(ICE_POINT_K + cel, 1, SEA_LEVEL);
  }

  @Test
  void statesByRelativeHumidity() {
    var vapour = new WorstDeviation("vapour pressure", "Pa");
    var ratio = new WorstDeviation("humidity ratio", "kg/kg");
    var wetBulb = new WorstDeviation("wet bulb", "K");
    var dewPoint = new WorstDeviation("dew point", "K");
    var enthalpy = new WorstDeviation("moist air enthalpy", "kJ/kg");
    var volume = new WorstDeviation("moist air volume", "m3/kg");
    var density = new WorstDeviation("moist air density", "kg/m3");
    for (var row : ReferenceTable.read("air/moist_air_points.csv")) {
      MoistAir air =
          MoistAir.of(
              ICE_POINT_K + row.number("tdb_C"),
              row.number("RH"),
              new AbsolutePressure(row.number("p_Pa")));
      String at = row.text("label");
      vapour.add(air.vapourPressurePa(), row.number("pw_Pa"), at);
      ratio.add(air.humidityRatio(), row.number("W_kgkg"), at);
      wetBulb.add(air.wetBulbK() - ICE_POINT_K, row.number("twb_C"), at);
      dewPoint.add(air.dewPointK() - ICE_POINT_K, row.number("tdp_C"), at);
      enthalpy.add(air.enthalpyJPerKgDryAir() / 1e3, row.number("h_kJkg"), at);
      volume.add(air.volumeM3PerKgDryAir(), row.number("v_m3kg"), at);
      density.add(air.densityKgPerM3(), row.number("rho_kgm3"), at);
    }
    vapour.assertWithin(0.00051);
    ratio.assertWithin(5.1e-8);
    // The table's own solver stops within 0.001 K.
    wetBulb.assertWithin(0.002);
    dewPoint.assertWithin(0.002);
    enthalpy.assertWithin(0.000051);
    volume.assertWithin(5.1e-6);
    density.assertWithin(5.1e-6);
  }

  @Test
  void statesByWetBulb() {
    var humidity = new WorstDeviation("relative humidity from wet bulb", "1");
    var ratio = new WorstDeviation("humidity ratio from wet bulb", "kg/kg");
    var dewPoint = new WorstDeviation("dew point from wet bulb", "K");
    var enthalpy = new WorstDeviation("enthalpy from wet bulb", "kJ/kg");
    for (var row : ReferenceTable.read("air/moist_air_from_wetbulb.csv")) {
      MoistAir air =
          MoistAir.fromWetBulb(
              ICE_POINT_K + row.number("tdb"), ICE_POINT_K + row.number("twb"), SEA_LEVEL);
      String at = row.text("label");
      humidity.add(air.relativeHumidity(), row.number("RH"), at);
      ratio.add(air.humidityRatio(), row.number("W"), at);
      dewPoint.add(air.dewPointK() - ICE_POINT_K, row.number("tdp"), at);
      enthalpy.add(air.enthalpyJPerKgDryAir() / 1e3, row.number("h"), at);
    }
    // Wet bulbs in the table are rounded to 5e-5 K, which is 5e-6 of humidity.
    humidity.assertWithin(2e-5);
    ratio.assertWithin(2e-7);
    dewPoint.assertWithin(0.002);
    enthalpy.assertWithin(5e-4);
  }

  /** Handbook example 1, read off its chart: 40 Cel dry bulb, 20 Cel wet bulb at sea level. */
  @Test
  void handbookExample1() {
    MoistAir air = MoistAir.fromWetBulb(ICE_POINT_K + 40, ICE_POINT_K + 20, SEA_LEVEL);
    assertThat(air.humidityRatio()).isCloseTo(0.0065, within(0.0002));
    assertThat(air.dewPointK() - ICE_POINT_K).isCloseTo(7, within(0.5));
    assertThat(air.relativeHumidity()).isCloseTo(0.14, within(0.005));
    assertThat(air.enthalpyJPerKgDryAir()).isCloseTo(56_700, within(100.0));
    assertThat(air.volumeM3PerKgDryAir()).isCloseTo(0.896, within(0.001));
  }

  @Property
  void wetBulbAndDewPointLeadBackToTheState(
      @ForAll @DoubleRange(min = -30, max = 50) double cel,
      @ForAll @DoubleRange(min = 0.02, max = 1) double humidity,
      @ForAll @DoubleRange(min = 60_000, max = 110_000) double pa) {
    MoistAir air = MoistAir.of(ICE_POINT_K + cel, humidity, new AbsolutePressure(pa));
    assertThat(MoistAir.saturationPressurePa(air.dewPointK()))
        .isCloseTo(air.vapourPressurePa(), within(1e-3 * air.vapourPressurePa()));
    assertThat(air.relativeHumidity()).isCloseTo(humidity, within(1e-12));
    double wetBulbK = air.wetBulbK();
    assertThat(wetBulbK).isLessThanOrEqualTo(air.dryBulbK() + 1e-6);
    // The two wet-bulb equations do not meet exactly at 0 Cel, so neither do their inverses.
    if (Math.abs(wetBulbK - ICE_POINT_K) > 0.02) {
      MoistAir back =
          MoistAir.fromWetBulb(air.dryBulbK(), Math.min(wetBulbK, air.dryBulbK()), air.pressure());
      assertThat(back.humidityRatio()).isCloseTo(air.humidityRatio(), within(1e-8));
    }
  }

  @Test
  void namesValueUnitAndRange() {
    assertThatThrownBy(() -> MoistAir.of(300, 2, SEA_LEVEL))
        .isInstanceOf(OutOfRangeException.class)
        .hasMessage("relative humidity 200 % is outside 0 to 100 %");
    assertThatThrownBy(() -> MoistAir.of(300, -0.01, SEA_LEVEL))
        .hasMessage("relative humidity -1 % is outside 0 to 100 %");
    assertThatThrownBy(() -> MoistAir.of(100, 0.5, SEA_LEVEL))
        .hasMessage("saturation temperature 100 K is outside 173.15 to 473.15 K");
    assertThatThrownBy(() -> MoistAir.fromWetBulb(300, 301, SEA_LEVEL))
        .hasMessage("wet bulb 301 K is outside 282.277 to 300 K");
    assertThatThrownBy(() -> MoistAir.of(300, 0, SEA_LEVEL).dewPointK())
        .hasMessageStartingWith("vapour pressure 0 Pa is outside 0.00140");
    assertThatThrownBy(() -> MoistAir.of(420, 1, SEA_LEVEL))
        .hasMessageContaining("Pa is outside 0 to 91192.5 Pa");
  }
}
