package heatwake.analysis.steady;

import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.uncertainty.Estimate;

/**
 * What a mean heat does not tell because some of it is still under way. Condenser, metal and the
 * water on its way hold the heat of some two minutes (common practice: the rise of a heater that
 * has just started is full after two or three). If the heat at the end of a span is not what it was
 * at its beginning, so much of the difference has been stored or given back:
 *
 * <pre>u = T |Q_end - Q_begin| / (D sqrt(3)), T = 150 s, D the length of the span</pre>
 *
 * rectangular, since T is no more than that. Swings in between cancel.
 */
final class HeatUnderWay {
  private static final double HELD_S = 150;

  /** The heat at either end is a mean over so long, or half of a short span (ours). */
  private static final double END_S = 120;

  private HeatUnderWay() {}

  /** A mean of a span, widened by it. */
  static Estimate widen(Estimate mean, double[] heatW, SteadyFinder.Span span, double stepS) {
    int length = span.to() - span.from();
    int end = Math.max(1, Math.min(length / 2, (int) Math.round(END_S / stepS)));
    double first = MovingMean.once(heatW, span.from(), span.from() + end);
    double last = MovingMean.once(heatW, span.to() - end, span.to());
    double whole = MovingMean.once(heatW, span.from(), span.to());
    double share = HELD_S * (last - first) / (whole * length * stepS * Math.sqrt(3));
    return Double.isFinite(share)
        ? new Estimate(mean.value(), Math.hypot(mean.standard(), share * mean.value()))
        : mean;
  }
}
