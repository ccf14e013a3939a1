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
    double lowest = lowestHeld(wet, held);
    return lowest >= least && lowest < Double.POSITIVE_INFINITY
        ? OptionalDouble.of(lowest)
        : OptionalDouble.empty();
  }

  /** The lowest draw that was not passed for so many instants on end; infinite without one. */
  static double lowestHeld(double[] draw, int held) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int from = 0; from + held <= draw.length; from++) {
      double highest = 0;
      int i = from;
      while (i < from + held && draw[i] < lowest) {
        highest = Math.max(highest, draw[i]);
        i++;
      }
      if (i == from + held) {
        lowest = highest;
      } else {
        from = i;
      }
    }
    return lowest;
  }
}
