package heatwake.analysis.sensor;

/** What the two thermistor equations share: the range in which a bead can be believed. */
final class Thermistor {
  /** Colder than any site; an open wire reads as cold. Ours. */
  static final double LOWEST_K = 273.15 - 60;

  /** The usual upper limit of epoxy-coated beads (common practice); a short reads as hot. */
  static final double HIGHEST_K = 273.15 + 150;

  private Thermistor() {}

  static Sensed sensed(double ohm, double tK) {
    if (Double.isNaN(ohm)) {
      return FaultText.notANumber();
    }
    // An infinite or huge resistance can also drive the equation past its pole.
    if (ohm <= 0 || tK > HIGHEST_K) {
      return new Sensed.Fault(
          FaultText.plain(Math.max(ohm, 0))
              + " Ohm would mean more than "
              + FaultText.cel(HIGHEST_K)
              + ": short circuit; check the wire for damage and water");
    }
    if (!(tK >= LOWEST_K)) {
      return new Sensed.Fault(
          FaultText.ohms(ohm)
              + " would mean less than "
              + FaultText.cel(LOWEST_K)
              + ": open circuit; check the wire and the connector");
    }
    return new Sensed.Value(tK);
  }
}
