package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;

/**
 * What a running compressor does elsewhere, as a share of the most it does in the run: pressure
 * lift, or where that is not read temperature rise. It tells a fan that draws much from a
 * compressor that draws little.
 */
final class CompressorEffect {
  /** A level that takes less than this share of all draw above it is only passed through (ours). */
  private static final double STAYS = 0.3;

  private final double[] share;
  private final boolean absent;

  private CompressorEffect(double[] share, boolean absent) {
    this.share = share;
    this.absent = absent;
  }

  static CompressorEffect of(Timeline timeline, Optional<Track> lift, Optional<WaterRise> rise) {
    boolean lifts = lift.isPresent() && lift.get().everYes();
    boolean heats = rise.isPresent() && !Double.isNaN(rise.get().fullK());
    double[] share = new double[timeline.size()];
    Arrays.fill(share, Double.NaN);
    if (lifts && timeline.has(Channel.PRESSURE_SUCTION)) {
      fill(share, RefrigerantLift.lift(timeline), RefrigerantLift.full(timeline));
    } else if (heats) {
      fill(share, rise.get().riseK(), rise.get().fullK());
    }
    return new CompressorEffect(share, (lift.isPresent() || rise.isPresent()) && !lifts && !heats);
  }

  private static void fill(double[] share, double[] values, double full) {
    for (int i = 0; i < share.length; i++) {
      share[i] = values[i] / full;
    }
  }

  /** Whether it could be seen, and was not all run. */
  boolean isAbsent() {
    return absent;
  }

  /**
   * Its middle share at the instants at which a draw stood between two levels; NaN if that was a
   * small part of all the time above the lower one.
   */
  double medianWhere(double[] draw, double from, double to) {
    double[] found = new double[draw.length];
    int count = 0;
    int above = 0;
    for (int i = 0; i < draw.length; i++) {
      if (draw[i] >= from) {
        above++;
        if (draw[i] < to && !Double.isNaN(share[i])) {
          found[count++] = share[i];
        }
      }
    }
    if (count == 0 || count < STAYS * above) {
      return Double.NaN;
    }
    double[] sorted = Arrays.copyOf(found, count);
    Arrays.sort(sorted);
    return sorted[count / 2];
  }
}
