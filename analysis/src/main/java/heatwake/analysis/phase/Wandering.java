package heatwake.analysis.phase;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * How far a draw moves of itself, as seen by one look at it. That is what it does at rest; but of a
 * short rest the fan's own start may be most. A meter's noise is mostly a share of what it reads,
 * so that a running heater shows the most that a small draw wanders.
 *
 * @param atRest the usual move at rest
 * @param share the usual move of all the run, as a share of the draw
 */
record Wandering(double atRest, double share) {
  /** What moves by more than so much of the usual is on its way (three standard deviations). */
  private static final double BEYOND = 3 * 1.4826;

  /**
   * That of a run.
   *
   * @param back instants that a look goes back
   * @param move what it sees at an instant
   */
  static Wandering of(double[] draw, Track compressor, int back, IntToDoubleFunction move) {
    double[] resting = new double[draw.length];
    double[] shares = new double[draw.length];
    Arrays.fill(resting, Double.NaN);
    Arrays.fill(shares, Double.NaN);
    for (int k = back; k < draw.length; k++) {
      double moved = Math.abs(move.applyAsDouble(k));
      resting[k] = compressor.no(k) && compressor.no(k - back) ? moved : Double.NaN;
      shares[k] = draw[k] > 0 ? moved / draw[k] : Double.NaN;
    }
    return new Wandering(middle(resting), middle(shares));
  }

  private static double middle(double[] values) {
    LevelHistogram usual = LevelHistogram.of(values);
    return usual.total() == 0 ? 0 : usual.quantile(0.5);
  }

  /** Beyond this a draw of some level is on its way. */
  double beyond(double level) {
    return BEYOND * Math.min(atRest, share * level);
  }
}
