package heatwake.analysis.phase;

import java.util.OptionalDouble;

/**
 * What a meter shows with the compressor at rest and water moving, where that is more than any fan
 * draws: another load, mostly the pool pump, that comes and goes with the water. A pump that is on
 * its own meter leaves the heater's at a few watts.
 */
final class WetRest {
  private WetRest() {}

  /**
   * Looks for it.
   *
   * @param draw the draw, without that of motors that stall
   * @param compressor whether the compressor runs, or ran just before
   * @param most draw from which the compressor runs
   * @param least what is more than a fan's
   * @param held instants for which a level is held at least
   */
  static OptionalDouble of(
      double[] draw, Track compressor, Track waterMoves, double most, double least, int held) {
    double[] wet = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (!compressor.no(i) || !waterMoves.yes(i) || draw[i] > most) {
        wet[i] = Double.NaN;
      }
    }
    double lowest = HeldLevel.lowest(wet, held);
    return lowest >= least && lowest < Double.POSITIVE_INFINITY
        ? OptionalDouble.of(lowest)
        : OptionalDouble.empty();
  }
}
