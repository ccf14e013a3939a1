package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.cel;
import static heatwake.analysis.sensor.SensedValues.fault;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference: the register table of 1-Wire thermometers' data sheets. */
class DigitalThermometerTest {
  @ParameterizedTest
  @CsvSource({
    "07D0, 125",
    "0550, 85",
    "0191, 25.0625",
    "00A2, 10.125",
    "0008, 0.5",
    "0000, 0",
    "FFF8, -0.5",
    "FF5E, -10.125",
    "FE6F, -25.0625",
    "FC90, -55"
  })
  void registerTable(String hex, double cel) {
    assertThat(DigitalThermometer.fromRegisterK(Integer.parseInt(hex, 16)) - 273.15)
        .isCloseTo(cel, within(1e-9));
  }

  @Test
  void powerOnValueIsNoReadingUnlessReachedInSteps() {
    Conversion probe = new DigitalThermometer().begin();
    assertThat(fault(probe.next(273.15 + 85, 0))).startsWith("85 Cel is what the sensor holds");
    assertThat(cel(probe.next(273.15 + 28, 1))).isCloseTo(28, within(1e-9));
    assertThat(fault(probe.next(273.15 + 85, 2))).startsWith("85 Cel is what the sensor holds");
    assertThat(cel(probe.next(273.15 + 83.5, 3))).isCloseTo(83.5, within(1e-9));
    assertThat(cel(probe.next(273.15 + 85, 4))).isCloseTo(85, within(1e-9));
  }

  @Test
  void noAnswerAndImpossibleValues() {
    Conversion probe = new DigitalThermometer().begin();
    assertThat(fault(probe.next(273.15 - 127, 0)))
        .isEqualTo("-127 Cel: the sensor does not answer; check wire and connector");
    assertThat(fault(probe.next(273.15 + 400, 0)))
        .isEqualTo("400 Cel is outside the sensor's -55 to 125 Cel; check the wiring");
    assertThat(fault(probe.next(Double.NaN, 0))).contains("no number");
  }
}
