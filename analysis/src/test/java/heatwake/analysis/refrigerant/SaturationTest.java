package heatwake.analysis.refrigerant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.GaugePressure;
import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.reference.ReferenceTable;
import heatwake.analysis.reference.WorstDeviation;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/**
 * Reference: CoolProp 7.2.0 equations of state and mixture model, REFPROP values quoted in public,
 * pressure-temperature charts.
 */
class SaturationTest {
  private static final double ICE_POINT_K = 273.15;
  private static final double PSI_PA = 6894.757293168;

  private static final Map<String, Refrigerant> BY_COLUMN =
      Map.of(
          "R410A", Refrigerant.R410A,
          "R407C", Refrigerant.R407C,
          "R454B", Refrigerant.R454B,
          "R32", Refrigerant.R32,
          "R134a", Refrigerant.R134A,
          "R290", Refrigerant.R290);

  @Test
  void pureSubstancesAgainstTheirEquationsOfState() {
    for (String column : new String[] {"R32", "R134a", "R290"}) {
      Saturation saturation = Saturation.of(BY_COLUMN.get(column));
      var pressure = new WorstDeviation(column + " pressure against its EOS", "relative");
      var temperature = new WorstDeviation(column + " temperature against its EOS", "K");
      for (var row : ReferenceTable.read("refrigerant/refrigerant_psat_pure.csv")) {
        double tK = ICE_POINT_K + row.number("t_C");
        double pa = row.number(column + "_psat_kPa") * 1e3;
        String at = row.text("t_C") + " Cel";
        pressure.addRelative(saturation.bubblePressure(tK).pa(), pa, at);
        pressure.addRelative(saturation.dewPressure(tK).pa(), pa, at);
        temperature.add(saturation.bubbleTemperatureK(new AbsolutePressure(pa)), tK, at);
        temperature.add(saturation.dewTemperatureK(new AbsolutePressure(pa)), tK, at);
      }
      // What the ancillaries claim.
      pressure.assertWithin(2e-4);
      temperature.assertWithin(0.01);
    }
  }

  @Test
  void blendsAgainstTheirLinesAndTheMixtureModel() {
    for (String fluid : new String[] {"R410A", "R407C", "R454B"}) {
      Saturation saturation = Saturation.of(BY_COLUMN.get(fluid));
      var lines = new WorstDeviation(fluid + " pressure against the published lines", "relative");
      var mixture = new WorstDeviation(fluid + " pressure against the mixture model", "relative");
      var temperature = new WorstDeviation(fluid + " temperature against the mixture model", "K");
      for (var row : ReferenceTable.read("refrigerant/refrigerant_psat_blends.csv")) {
        if (!row.text("fluid").equals(fluid)) {
          continue;
        }
        double tK = ICE_POINT_K + row.number("t_C");
        double bubblePa = saturation.bubblePressure(tK).pa();
        double dewPa = saturation.dewPressure(tK).pa();
        String at = row.text("t_C") + " Cel";
        if (row.has("bubble_ancillary_kPa")) {
          lines.addRelative(bubblePa, row.number("bubble_ancillary_kPa") * 1e3, "bubble " + at);
          lines.addRelative(dewPa, row.number("dew_ancillary_kPa") * 1e3, "dew " + at);
        }
        if (row.has("bubble_mixture_kPa")) {
          double pa = row.number("bubble_mixture_kPa") * 1e3;
          mixture.addRelative(bubblePa, pa, "bubble " + at);
          temperature.add(
              saturation.bubbleTemperatureK(new AbsolutePressure(pa)), tK, "bubble " + at);
        }
        if (row.has("dew_mixture_kPa")) {
          double pa = row.number("dew_mixture_kPa") * 1e3;
          mixture.addRelative(dewPa, pa, "dew " + at);
          temperature.add(saturation.dewTemperatureK(new AbsolutePressure(pa)), tK, "dew " + at);
        }
      }
      if (BY_COLUMN.get(fluid) != Refrigerant.R454B) {
        // Half of the last digit printed, 0.001 kPa in 200 kPa.
        lines.assertWithin(3e-6);
      }
      mixture.assertWithin(3e-4);
      temperature.assertWithin(0.015);
    }
  }

  @Test
  void temperaturesFromGaugePressures() {
    var worst = new WorstDeviation("saturation temperature from psig", "K");
    for (var row : ReferenceTable.read("refrigerant/refrigerant_tsat_from_psig.csv")) {
      AbsolutePressure pressure =
          new GaugePressure(row.number("p_psig") * PSI_PA)
              .absolute(AbsolutePressure.STANDARD_ATMOSPHERE);
      assertThat(pressure.pa() / 1e3).isCloseTo(row.number("p_kPa_abs"), within(6e-4));
      for (String fluid : new String[] {"R410A", "R407C"}) {
        Saturation saturation = Saturation.of(BY_COLUMN.get(fluid));
        String at = fluid + " at " + row.text("p_psig") + " psig";
        worst.add(
            saturation.bubbleTemperatureK(pressure) - ICE_POINT_K,
            row.number(fluid + "_Tbub_C"),
            at);
        worst.add(
            saturation.dewTemperatureK(pressure) - ICE_POINT_K, row.number(fluid + "_Tdew_C"), at);
      }
      for (String fluid : new String[] {"R32", "R134a", "R290"}) {
        double expected = row.number(fluid + "_Tsat_C");
        Saturation saturation = Saturation.of(BY_COLUMN.get(fluid));
        if (ICE_POINT_K + expected <= saturation.highestK()) {
          worst.add(
              saturation.dewTemperatureK(pressure) - ICE_POINT_K,
              expected,
              fluid + " at " + row.text("p_psig") + " psig");
        }
      }
    }
    worst.assertWithin(0.01);
  }

  /** Public issue 551 of NIST's REFPROP: R-410A at 20 Cel, 1447603.778 Pa. */
  @Test
  void r410aBubbleAt20CelAgainstRefprop() {
    assertThat(Saturation.of(Refrigerant.R410A).bubblePressure(293.15).pa())
        .isCloseTo(1_447_603.778, within(2e-4 * 1_447_603.778));
  }

  /** A component maker's calculator quoted in REFPROP issue 402: bubble and dew, Cel. */
  @Test
  void r410aAgainstAComponentMakersCalculator() {
    double[][] mpaBubbleDew = {{2.58, 42.56, 42.68}, {2.60, 42.89, 43.00}, {2.70, 44.47, 44.59}};
    Saturation saturation = Saturation.of(Refrigerant.R410A);
    var worst = new WorstDeviation("R-410A against a component maker's calculator", "K");
    for (double[] row : mpaBubbleDew) {
      AbsolutePressure pressure = new AbsolutePressure(row[0] * 1e6);
      worst.add(saturation.bubbleTemperatureK(pressure) - ICE_POINT_K, row[1], row[0] + " MPa");
      worst.add(saturation.dewTemperatureK(pressure) - ICE_POINT_K, row[2], row[0] + " MPa");
    }
    worst.assertWithin(0.01);
  }

  /** A maker's R-454B bubble chart and a public R-410A chart, degF and psig. */
  @Test
  void againstPressureTemperatureCharts() {
    double[][] r454b = {
      {0, 45.3},
      {20, 74.0},
      {40, 111.9},
      {60, 161.0},
      {80, 223.3},
      {100, 300.8},
      {120, 395.9},
      {130, 451.0}
    };
    double[][] r410a = {
      {0, 48.4},
      {20, 78.7},
      {40, 118.8},
      {50, 143.1},
      {60, 170.7},
      {70, 201.7},
      {80, 236.5},
      {90, 275.3},
      {100, 318.5},
      {110, 366.5},
      {120, 419.5},
      {130, 478.0},
      {140, 542.6}
    };
    var worstB = new WorstDeviation("R-454B bubble against a maker's chart", "psi");
    for (double[] row : r454b) {
      worstB.add(psig(Refrigerant.R454B, row[0]), row[1], row[0] + " degF");
    }
    var worstA = new WorstDeviation("R-410A bubble against a public chart", "psi");
    for (double[] row : r410a) {
      worstA.add(psig(Refrigerant.R410A, row[0]), row[1], row[0] + " degF");
    }
    // 0.1 % of the chart's last row.
    worstB.assertWithin(0.6);
    worstA.assertWithin(0.15);
  }

  private static double psig(Refrigerant refrigerant, double degF) {
    double tK = ICE_POINT_K + (degF - 32) / 1.8;
    return Saturation.of(refrigerant)
            .bubblePressure(tK)
            .gauge(AbsolutePressure.STANDARD_ATMOSPHERE)
            .pa()
        / PSI_PA;
  }

  /** Glide at one atmosphere: R-407C 7.0 K, R-410A 0.08 to 0.12 K (CoolProp 7.2.0). */
  @Test
  void glide() {
    Saturation r407c = Saturation.of(Refrigerant.R407C);
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    assertThat(r407c.bubbleTemperatureK(atmosphere) - ICE_POINT_K).isCloseTo(-43.626, within(0.01));
    assertThat(r407c.dewTemperatureK(atmosphere) - ICE_POINT_K).isCloseTo(-36.630, within(0.01));
    Saturation r410a = Saturation.of(Refrigerant.R410A);
    assertThat(r410a.dewTemperatureK(atmosphere) - r410a.bubbleTemperatureK(atmosphere))
        .isBetween(0.05, 0.12);
  }

  @Property
  void temperatureIsTheInverseOfPressure(
      @ForAll Refrigerant refrigerant, @ForAll @DoubleRange(min = 0, max = 1) double share) {
    Saturation saturation = Saturation.of(refrigerant);
    double tK =
        Saturation.LOWEST_K + 1e-6 + share * (saturation.highestK() - Saturation.LOWEST_K - 2e-6);
    assertThat(saturation.bubbleTemperatureK(saturation.bubblePressure(tK)))
        .isCloseTo(tK, within(0.002));
    assertThat(saturation.dewTemperatureK(saturation.dewPressure(tK))).isCloseTo(tK, within(0.002));
    assertThat(saturation.bubblePressure(tK).pa())
        .isGreaterThanOrEqualTo(saturation.dewPressure(tK).pa());
  }

  @Test
  void aWholeRunGivesTheSameAsItsReadings() {
    Saturation saturation = Saturation.of(Refrigerant.R407C);
    AbsolutePressure atmosphere = new AbsolutePressure(90e3);
    double[] gauge = {1.5e6, Double.NaN, -90e3, 9e6};
    AbsolutePressure first = new GaugePressure(1.5e6).absolute(atmosphere);
    assertThat(saturation.bubbleTemperaturesK(gauge, atmosphere))
        .containsExactly(saturation.bubbleTemperatureK(first), Double.NaN, Double.NaN, Double.NaN);
    assertThat(saturation.dewTemperaturesK(gauge, atmosphere)[0])
        .isEqualTo(saturation.dewTemperatureK(first));
  }

  @Test
  void namesValueUnitAndRange() {
    Saturation saturation = Saturation.of(Refrigerant.R410A);
    assertThatThrownBy(() -> saturation.bubblePressure(400))
        .isInstanceOf(OutOfRangeException.class)
        .hasMessage("R-410A bubble temperature 400 K is outside 213.15 to 343.15 K");
    assertThatThrownBy(() -> saturation.dewTemperatureK(new AbsolutePressure(9e6)))
        .hasMessage("R-410A dew absolute pressure 9000000 Pa is outside 63962.9 to 4761730 Pa");
    assertThatThrownBy(() -> new AbsolutePressure(-1))
        .hasMessage("absolute pressure -1 Pa is outside 0 to 1000000000 Pa");
    assertThatThrownBy(() -> new GaugePressure(-2e5).absolute(AbsolutePressure.STANDARD_ATMOSPHERE))
        .hasMessage("absolute pressure -98675 Pa is outside 0 to 1000000000 Pa");
  }
}
