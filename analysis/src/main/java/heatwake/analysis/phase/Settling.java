package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * From when a running heater is steady: two neighbouring windows of a signal have the same mean
 * (moving-window detector as in NIST SP 1087, 2008; window and limit ours).
 */
final class Settling {
  private static final double WINDOW_S = 120;

  /** Means of neighbouring windows differ by less than this share. */
  private static final double SETTLED_SHARE = 0.03;

  private final double[] sums;
  private final int[] counts;
  private final int window;
  private final double floor;

  /**
   * @param signal what shall settle
   * @param floor difference of means that is only noise, in the signal's unit
   */
  private Settling(double[] signal, long stepMs, double floor) {
    this.window = (int) Math.max(3, Math.round(WINDOW_S * 1000 / stepMs));
    this.floor = floor;
    this.sums = new double[signal.length + 1];
    this.counts = new int[signal.length + 1];
    for (int i = 0; i < signal.length; i++) {
      boolean there = !Double.isNaN(signal[i]);
      sums[i + 1] = sums[i] + (there ? signal[i] : 0);
      counts[i + 1] = counts[i] + (there ? 1 : 0);
    }
  }

  /** By what is slowest to settle and is read: the rise, the high side, or the draw. */
  static Settling in(Timeline timeline, Optional<WaterRise> rise) {
    if (rise.isPresent() && !Double.isNaN(rise.get().fullK())) {
      return new Settling(rise.get().riseK(), timeline.stepMs(), 0.05);
    }
    if (timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return new Settling(timeline.of(Channel.PRESSURE_DISCHARGE), timeline.stepMs(), 10e3);
    }
    Channel electric = timeline.preferred(Channel.POWER, Channel.CURRENT);
    return new Settling(timeline.of(electric), timeline.stepMs(), 0);
  }

  /** First instant in a stretch from {@code from} to {@code to} at which it is steady. */
  int steadyFrom(int from, int to) {
    for (int i = from + 2 * window; i < to; i++) {
      double late = mean(i - window, i);
      double early = mean(i - 2 * window, i - window);
      if (Math.abs(late - early) <= Math.max(floor, SETTLED_SHARE * Math.abs(late))) {
        return i - window;
      }
    }
    return to;
  }

  private double mean(int from, int to) {
    int count = counts[to] - counts[from];
    return count == 0 ? Double.NaN : (sums[to] - sums[from]) / count;
  }
}
