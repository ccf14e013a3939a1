package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.cel;
import static heatwake.analysis.sensor.SensedValues.fault;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.reference.ReferenceTable;
import heatwake.analysis.reference.WorstDeviation;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference: NIST ITS-90 thermocouple tables (Monograph 175). */
class ThermocoupleTest {
  private static final double ICE_POINT_K = 273.15;

  @Test
  void referenceTablesBothWays() {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      var forward = new WorstDeviation("type " + type + " voltage against ITS-90", "mV");
      var inverse = new WorstDeviation("type " + type + " temperature against ITS-90", "K");
      var polynomial = new WorstDeviation("type " + type + " inverse polynomial", "K");
      Thermocouple couple = new Thermocouple(type, ICE_POINT_K);
      for (var row : ReferenceTable.read("sensor/thermocouple_its90.csv")) {
        double cel = row.number("t_C");
        double mv = row.number("E_" + type + "_mV");
        String at = cel + " Cel";
        forward.add(couple.voltageV(ICE_POINT_K + cel) * 1e3, mv, at);
        inverse.add(cel(couple.convert(couple.voltageV(ICE_POINT_K + cel))), cel, at);
        polynomial.add(
            ReferenceFunction.of(type)
                .inversePolynomialCel(couple.voltageV(ICE_POINT_K + cel) * 1e3),
            row.number(type + "_inverse_C"),
            at);
      }
      forward.assertWithin(0.000051);
      inverse.assertWithin(1e-6);
      polynomial.assertWithin(0.00051);
    }
  }

  /** NIST tables print three decimals of a millivolt. */
  @ParameterizedTest
  @CsvSource({"25, 1.000", "100, 4.096", "200, 8.138", "400, 16.397"})
  void printedTableOfTypeK(double cel, double mv) {
    assertThat(new Thermocouple(ThermocoupleType.K, ICE_POINT_K).voltageV(ICE_POINT_K + cel) * 1e3)
        .isCloseTo(mv, within(0.00051));
  }

  /** The junction's voltage is added, not its temperature; values by independent code, +-0.05 K. */
  @Test
  void coldJunctionIsAddedAsVoltage() {
    double junctionK = ICE_POINT_K + 24;
    assertThat(cel(new Thermocouple(ThermocoupleType.K, junctionK).convert(0.250e-3)))
        .isCloseTo(30.166, within(0.05));
    assertThat(cel(new Thermocouple(ThermocoupleType.T, junctionK).convert(0.250e-3)))
        .isCloseTo(30.127, within(0.03));
    double wrong = 24 + cel(new Thermocouple(ThermocoupleType.K, ICE_POINT_K).convert(0.250e-3));
    assertThat(Math.abs(wrong - 30.166)).isGreaterThan(0.08);
  }

  @Property
  void inverseOfInverse(
      @ForAll ThermocoupleType type,
      @ForAll @DoubleRange(min = -199.99, max = 399.99) double cel,
      @ForAll @DoubleRange(min = -20, max = 60) double junctionCel) {
    Thermocouple couple = new Thermocouple(type, ICE_POINT_K + junctionCel);
    assertThat(cel(couple.convert(couple.voltageV(ICE_POINT_K + cel))))
        .isCloseTo(cel, within(1e-4));
  }

  @Test
  void saysWhatIsWrongWithTheLoop() {
    Thermocouple couple = new Thermocouple(ThermocoupleType.T, ICE_POINT_K);
    assertThat(fault(couple.convert(2.5)))
        .isEqualTo(
            "2500 mV is outside the -5.603 to 20.87 mV of a type T thermocouple: broken wire or"
                + " wrong type");
    assertThat(fault(couple.convert(Double.NaN))).contains("no number");
    assertThatThrownBy(() -> couple.voltageV(ICE_POINT_K + 500))
        .hasMessage("thermocouple temperature 773.15 K is outside 73.15 to 673.15 K");
    assertThatThrownBy(() -> new Thermocouple(ThermocoupleType.K, 24))
        .hasMessage("cold junction temperature 24 K is outside 233.15 to 358.15 K");
  }
}
