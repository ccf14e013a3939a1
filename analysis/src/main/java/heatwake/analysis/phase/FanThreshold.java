package heatwake.analysis.phase;

import java.util.OptionalDouble;

/** The draw from which at least the fan runs: above the heater at rest, below the compressor. */
final class FanThreshold {
  private FanThreshold() {}

  /**
   * Lays it into the gap between the heater at rest and what it draws beside the compressor.
   *
   * @param draw the draw, without that of motors that stall
   * @param compressor whether the compressor runs, or ran just before
   * @param beside draw at rest with another load on the meter, if there is one
   * @param compressorThreshold draw from which the compressor runs
   * @param seen instants at which a fan that runs alone is seen at least
   * @param held instants for which a rest is held at least
   * @param least what a fan draws at least
   */
  static double of(
      double[] draw,
      Track compressor,
      Track waterMoves,
      OptionalDouble beside,
      double compressorThreshold,
      int seen,
      int held,
      double least) {
    double[] idle = draw.clone();
    double[] standing = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (!compressor.no(i) || draw[i] > compressorThreshold) {
        idle[i] = Double.NaN;
      }
      if (!compressor.no(i) || !waterMoves.no(i)) {
        standing[i] = Double.NaN;
      }
    }
    LevelHistogram atRest = LevelHistogram.of(standing);
    LevelHistogram compressorRests = LevelHistogram.of(idle);
    double rest =
        atRest.total() > 0
            ? atRest.quantile(0.5)
            : Math.min(compressorRests.quantile(0.05), HeldLevel.lowest(idle, held));
    if (Double.isNaN(rest)) {
      return least;
    }
    // Without a look at the heater at rest a lone low level may be the fan itself.
    double seenRest = atRest.total() > 0 ? rest : Math.min(rest, 2 * least);
    double base = beside.orElse(seenRest);
    double lowest = base + least;
    double highest = Math.max(lowest, compressorRests.highestHeld(seen));
    return Math.max(lowest, compressorRests.valley(lowest, highest));
  }
}
