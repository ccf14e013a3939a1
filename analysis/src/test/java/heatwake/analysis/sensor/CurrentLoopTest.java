package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.fault;
import static heatwake.analysis.sensor.SensedValues.si;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference: NAMUR recommendation NE 43 levels. */
class CurrentLoopTest {
  private static final CurrentLoop PRESSURE = new CurrentLoop(Quantity.PRESSURE, 0, 4e6);

  @ParameterizedTest
  @CsvSource({"4, 0", "20, 4e6", "12, 2e6", "3.8, -50000", "20.5, 4.125e6"})
  void scalesLinearlyOverTheValidBand(double milliampere, double pascal) {
    assertThat(si(PRESSURE.convert(milliampere / 1e3))).isCloseTo(pascal, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | loop current 0 mA is at or below 3.6 mA: wire broken, loop without supply, or sensor"
            + " fault",
        "3.6 | loop current 3.6 mA is at or below 3.6 mA: wire broken, loop without supply, or"
            + " sensor fault",
        "3.7 | loop current 3.7 mA is below 3.8 mA: the transmitter is under its range",
        "20.7 | loop current 20.7 mA is above 20.5 mA: the transmitter is over its range",
        "21 | loop current 21 mA is at or above 21 mA: short circuit or sensor fault",
        "NaN | no number came from the probe; check its wiring and supply"
      })
  void namesTheFault(double milliampere, String reason) {
    assertThat(fault(PRESSURE.convert(milliampere / 1e3))).isEqualTo(reason);
  }

  @Test
  void aFallingScaleIsAllowedAnEmptyOneNot() {
    assertThat(si(new CurrentLoop(Quantity.PRESSURE, 100, 0).convert(8e-3)))
        .isCloseTo(75, within(1e-9));
    assertThatThrownBy(() -> new CurrentLoop(Quantity.PRESSURE, 5, 5))
        .hasMessage("a 4-20 mA loop needs two different end values, not 5.0 and 5.0 Pa");
  }
}
