package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.cel;
import static heatwake.analysis.sensor.SensedValues.fault;
import static heatwake.analysis.sensor.SensedValues.si;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.reference.ReferenceTable;
import heatwake.analysis.reference.WorstDeviation;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Reference: IEC 60751 resistance table. */
class RtdTest {
  @Test
  void resistanceTableBothWays() {
    var forward = new WorstDeviation("Pt100 resistance against IEC 60751", "Ohm");
    var inverse = new WorstDeviation("Pt100 temperature against IEC 60751", "K");
    var inverse1000 = new WorstDeviation("Pt1000 temperature against IEC 60751", "K");
    for (var row : ReferenceTable.read("sensor/iec60751_pt100.csv")) {
      double cel = row.number("t_C");
      double ohm = row.number("R_Pt100_ohm");
      String at = cel + " Cel";
      forward.add(Rtd.pt100().resistanceOhm(273.15 + cel), ohm, at);
      inverse.add(cel(Rtd.pt100().convert(ohm)), cel, at);
      inverse1000.add(cel(Rtd.pt1000().convert(row.number("R_Pt1000_ohm"))), cel, at);
    }
    // The table prints 1e-4 Ohm; the flattest slope in it is 0.29 Ohm/K, a tenth of the digits for
    // the Pt1000 column's 1e-3 Ohm.
    forward.assertWithin(0.000051);
    inverse.assertWithin(0.0002);
    inverse1000.assertWithin(0.0002);
  }

  /** Same standard; 110.000 Ohm by its equation. */
  @Test
  void inverseOfOneResistance() {
    assertThat(cel(Rtd.pt100().convert(110))).isCloseTo(25.6840, within(0.00005));
  }

  @Test
  void leadResistanceIsTakenOff() {
    Sensed without = new Rtd(100, 0).convert(110.898);
    Sensed with = new Rtd(100, 0.1).convert(110.998);
    assertThat(si(with)).isCloseTo(si(without), within(1e-9));
  }

  @Property
  void inverseOfInverse(@ForAll @DoubleRange(min = -199.99, max = 849.99) double cel) {
    assertThat(cel(Rtd.pt1000().convert(Rtd.pt1000().resistanceOhm(273.15 + cel))))
        .isCloseTo(cel, within(1e-6));
  }

  @Test
  void saysWhatIsWrongWithTheLoop() {
    assertThat(fault(Rtd.pt1000().convert(Double.POSITIVE_INFINITY)))
        .isEqualTo(
            "an endless resistance is above the sensor's 3905 Ohm: open circuit; check the wire and"
                + " the connector");
    assertThat(fault(Rtd.pt1000().convert(250_000)))
        .isEqualTo(
            "250000 Ohm is above the sensor's 3905 Ohm: open circuit; check the wire and the"
                + " connector");
    assertThat(fault(Rtd.pt100().convert(0.3)))
        .isEqualTo(
            "0.3 Ohm is below the sensor's 18.52 Ohm: short circuit; check the wire for damage and"
                + " water");
    assertThat(fault(Rtd.pt100().convert(Double.NaN)))
        .isEqualTo("no number came from the probe; check its wiring and supply");
  }

  @Test
  void namesValueUnitAndRange() {
    assertThatThrownBy(() -> Rtd.pt100().resistanceOhm(20))
        .hasMessage("thermometer temperature 20 K is outside 73.15 to 1123.15 K");
    assertThatThrownBy(() -> new Rtd(-100, 0))
        .hasMessage("resistance at 0 Cel -100 Ohm is outside 10 to 10000 Ohm");
  }
}
