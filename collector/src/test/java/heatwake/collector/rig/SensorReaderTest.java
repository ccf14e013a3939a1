package heatwake.collector.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.probe.ProbeConversion;
import heatwake.collector.probe.ProbeConversion.Converted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Raw sensor loops: from the rig's words to the stored value. */
class SensorReaderTest {
  private static final String SOURCE = "[[source]]\nname = \"b\"\nserial = \"/dev/null\"\n";

  private static ProbeSpec probe(String channel, String keys) {
    return RigReader.parse(
            SOURCE
                + "[[probe]]\nchannel = \""
                + channel
                + "\"\nsource = \"b\"\nfield = \"x\"\n"
                + keys.replace(';', '\n'),
            "rig.toml")
        .probes()
        .get(0);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        // IEC 60751:2008 table 1 (138.51 Ohm at 100 Cel, printed to 0.01 Ohm = 0.026 K; from
        // memory).
        "water-in, sensor = \"pt100\", 138.51, 100, 0.014",
        "water-in, sensor = \"pt1000\"; unit = \"kOhm\"; lead = \"0.4 Ohm\", 1.3855, 100, 0.02",
        // By definition: R25 at 25 Cel.
        "water-in, sensor = \"ntc\"; r25 = \"10 kOhm\"; beta = 3435, 10000, 25, 1e-9",
        // ITS-90 reference table, type K: 4.096 mV at 100 Cel with the cold junction at 0 Cel.
        "temp-discharge, sensor = \"thermocouple-k\"; cold-junction = \"0 Cel\", 4.096, 100, 0.02",
        // By definition: half way between 4 and 20 mA.
        "pressure-suction, sensor = \"4-20ma\"; at-4ma = \"0 bar\"; at-20ma = \"10 bar\", 12, 500, 1e-9",
        "air-in, sensor = \"1-wire\", 21.5, 21.5, 1e-9",
        "energy, sensor = \"counter\"; per-count = \"0.01 kWh\", 250, 2.5, 1e-9",
      })
  void convertsAsTheSensorsLawSays(
      String channel, String keys, double sent, double stored, double tolerance) {
    Converted converted = ProbeConversion.of(probe(channel, keys)).convert(sent, 0);
    assertThat(converted).isInstanceOf(Converted.Value.class);
    assertThat(((Converted.Value) converted).stored()).isCloseTo(stored, within(tolerance));
  }

  @Test
  void aPulseCounterGivesARateFromItsSecondCountOn() {
    ProbeConversion flow =
        ProbeConversion.of(probe("flow-heater", "sensor = \"counter\"; per-count = \"1 L\""));
    assertThat(flow.convert(100, 0)).isEqualTo(new Converted.Pending());
    assertThat(flow.convert(102, 1000)).isInstanceOf(Converted.Value.class);
    assertThat(((Converted.Value) flow.convert(104, 2000)).stored()).isCloseTo(120, within(1e-9));
  }

  @Test
  void aBrokenLoopIsAFault() {
    Converted converted =
        ProbeConversion.of(
                probe("power", "sensor = \"4-20ma\"; at-4ma = \"0 W\"; at-20ma = \"5 kW\""))
            .convert(3.5, 0);
    assertThat(converted).isInstanceOf(Converted.Fault.class);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "water-in, sensor = \"pt50\", `8: sensor = \"pt50\" is not known; use one of 1-wire, 4-20ma,"
            + " counter, ntc, pt100, pt1000, thermocouple-k, thermocouple-t`",
        "power, sensor = \"pt100\", `8: sensor = \"pt100\" measures temperature, but channel power is"
            + " power`",
        "water-in, beta = 3435, `8: beta is for a probe with a sensor; add sensor = \"...\"`",
        "water-in, sensor = \"pt100\"; beta = 3435, `9: beta does not go with sensor = \"pt100\"; leave"
            + " it out`",
        "water-in, sensor = \"pt100\"; unit = \"Cel\", `9: channel water-in: unit \"Cel\" does not"
            + " measure resistance; use one of Ohm, ohm, Ω, kOhm, kohm, kΩ`",
        "water-in, sensor = \"ntc\"; steinhart-hart = [1.0], `9: steinhart-hart takes three numbers"
            + " [a, b, c], and no r25 or beta`",
      })
  void namesTheLineOfEveryMistake(String channel, String keys, String message) {
    assertThatThrownBy(() -> probe(channel, keys))
        .isInstanceOf(MistakeException.class)
        .hasMessage("rig.toml:" + message);
  }
}
