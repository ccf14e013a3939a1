package heatwake.analysis.phase;

import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * What the heater's electric draw says of compressor and fan, by power, and by current where power
 * is silent.
 *
 * @param compressor whether the compressor draws
 * @param fan whether at least the fan draws
 */
record ElectricDraw(Track compressor, Track fan) {
  /**
   * A silence shorter than this hides no stop and start: against pressures that have not levelled
   * out a compressor does not start (they take a minute or more: common practice).
   */
  private static final double HIDES_NO_RESTART_S = 20;

  /**
   * Reads draw and fan off both meters; empty if there is neither.
   *
   * @param effect what a compressor does elsewhere, to tell it from a fan
   */
  static Optional<ElectricDraw> of(
      Timeline timeline, Heater heater, Track waterMoves, CompressorEffect effect) {
    Optional<ElectricDraw> power =
        DrawReader.read(timeline, DrawMeter.power(heater), waterMoves, effect);
    Optional<ElectricDraw> current =
        DrawReader.read(timeline, DrawMeter.current(heater), waterMoves, effect);
    Optional<ElectricDraw> either =
        power.isPresent() && current.isPresent()
            ? Optional.of(power.get().orWhereSilent(current.get()))
            : power.or(() -> current);
    int longest = timeline.instants(HIDES_NO_RESTART_S);
    return either.map(draw -> draw.overShortSilences(longest));
  }

  /** With the same answer over silences in which no compressor stops and starts again. */
  private ElectricDraw overShortSilences(int longest) {
    compressor.overSilences(longest);
    fan.overSilences(longest);
    return this;
  }

  private ElectricDraw orWhereSilent(ElectricDraw other) {
    for (int i = 0; i < compressor.size(); i++) {
      if (!compressor.known(i)) {
        compressor.set(i, other.compressor.at(i));
        fan.set(i, other.fan.at(i));
      }
    }
    return this;
  }
}
