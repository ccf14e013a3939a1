package heatwake.analysis.steady;

import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.uncertainty.Scatter;

/**
 * A quantity that has to hold still for a span to be steady.
 *
 * @param means its means over any window
 * @param interval instants from one reading to the next
 * @param noise standard deviation of one reading's scatter
 * @param shiftAbsolute most that the means of two half windows may differ, SI
 * @param shiftShare the same as a share of the mean; the greater of both counts
 * @param driftAbsolute most that it may move over a span, SI
 * @param driftShare the same as a share of the mean; the greater of both counts
 */
public record Watched(
    MovingMean means,
    int interval,
    double noise,
    double shiftAbsolute,
    double shiftShare,
    double driftAbsolute,
    double driftShare) {

  /** Heat, power or rise: half a window within 2 % (rise within 0.05 K), a span within 10 %. */
  static Watched output(double[] values, int interval, double leastShift) {
    return new Watched(
        new MovingMean(values),
        interval,
        Scatter.noise(values, interval),
        leastShift,
        0.02,
        5 * leastShift,
        0.1);
  }

  /** A temperature that is a condition: half a window within {@code shiftK}. */
  static Watched condition(double[] valuesK, int interval, double shiftK, double driftK) {
    return new Watched(
        new MovingMean(valuesK), interval, Scatter.noise(valuesK, interval), shiftK, 0, driftK, 0);
  }

  double shiftLimit(double mean) {
    return Math.max(shiftAbsolute, shiftShare * Math.abs(mean));
  }

  double driftLimit(double mean) {
    return Math.max(driftAbsolute, driftShare * Math.abs(mean));
  }
}
