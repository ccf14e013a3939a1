package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.cel;
import static heatwake.analysis.sensor.SensedValues.fault;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.reference.WorstDeviation;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/**
 * Reference: beta and Steinhart-Hart equations evaluated by independent code. The Steinhart-Hart
 * coefficients of the widely used 10 kOhm set are from memory.
 */
class ThermistorTest {
  private static final NtcBeta BETA = new NtcBeta(10_000, 3950);
  private static final NtcSteinhartHart WIDELY_USED =
      new NtcSteinhartHart(1.129241e-3, 2.341077e-4, 8.775468e-8);

  @Test
  void betaTable() {
    double[][] celAndOhm = {
      {0, 33620.6},
      {10, 20174.6},
      {20, 12535.3},
      {25, 10000},
      {27, 9155.06},
      {28, 8763.61},
      {30, 8037.14},
      {40, 5301.47},
      {50, 3588.18},
      {100, 697.52}
    };
    var forward = new WorstDeviation("NTC beta resistance", "relative");
    var inverse = new WorstDeviation("NTC beta temperature", "K");
    for (double[] row : celAndOhm) {
      forward.addRelative(BETA.resistanceOhm(273.15 + row[0]), row[1], row[0] + " Cel");
      inverse.add(cel(BETA.convert(row[1])), row[0], row[0] + " Cel");
    }
    forward.assertWithin(1e-5);
    inverse.assertWithin(2e-4);
  }

  @Test
  void steinhartHartValues() {
    double[][] ohmAndCel = {
      {32650, -0.00005}, {10000, 24.99997}, {8000, 30.16399}, {5000, 41.57258}
    };
    var worst = new WorstDeviation("NTC Steinhart-Hart temperature", "K");
    for (double[] row : ohmAndCel) {
      worst.add(cel(WIDELY_USED.convert(row[0])), row[1], row[0] + " Ohm");
    }
    worst.assertWithin(1e-5);
  }

  @Test
  void steinhartHartThroughThreePoints() {
    NtcSteinhartHart found = NtcSteinhartHart.through(32650, 273.15, 10000, 298.15, 3603, 323.15);
    assertThat(found.a()).isCloseTo(1.12525667e-3, within(1e-11));
    assertThat(found.b()).isCloseTo(2.34720447e-4, within(1e-12));
    assertThat(found.c()).isCloseTo(8.56305e-8, within(1e-13));
  }

  @Property
  void betaInverseOfInverse(@ForAll @DoubleRange(min = -59, max = 149) double cel) {
    assertThat(cel(BETA.convert(BETA.resistanceOhm(273.15 + cel)))).isCloseTo(cel, within(1e-9));
  }

  @Test
  void saysWhatIsWrongWithTheLoop() {
    for (SensorLoop loop : new SensorLoop[] {BETA, WIDELY_USED}) {
      Conversion probe = loop.begin();
      assertThat(fault(probe.next(0, 0)))
          .isEqualTo(
              "0 Ohm would mean more than 150 Cel: short circuit; check the wire for damage and"
                  + " water");
      assertThat(fault(probe.next(5e6, 0)))
          .isEqualTo(
              "5000000 Ohm would mean less than -60 Cel: open circuit; check the wire and the"
                  + " connector");
      assertThat(fault(probe.next(Double.POSITIVE_INFINITY, 0))).contains("open circuit");
      assertThat(fault(probe.next(-3, 0))).contains("short circuit");
      assertThat(fault(probe.next(Double.NaN, 0))).contains("no number");
    }
  }

  @Test
  void refusesConstantsThatMakeNoThermistor() {
    assertThatThrownBy(() -> new NtcBeta(10_000, 39))
        .hasMessage("thermistor beta 39 K is outside 1000 to 8000 K");
    assertThatThrownBy(() -> NtcSteinhartHart.through(10, 280, 10, 290, 5, 300))
        .hasMessageContaining("three different resistances");
  }
}
