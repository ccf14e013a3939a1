package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Levels of the draw, held over some minutes, and steps between them: a load that comes and goes on
 * top of the running compressor shows by such.
 */
final class LoadSteps {
  /** A level is the mean over so long, s; ours. */
  private static final double LEVEL_S = 180;

  /** It is the load's within this share; ours, as a clamp adds currents of unlike phase. */
  private static final double ALIKE = 0.25;

  /** And within so little of it the draw keeps to the level before it and after it; ours. */
  private static final double FLAT = 0.2;

  /** A step would have shown where this much of the time keeps its level; ours. */
  private static final double MOSTLY = 0.8;

  private final double[] draw;
  private final MovingMean means;
  private final int level;
  private final int edge;

  LoadSteps(Timeline timeline, Channel channel) {
    this.draw = timeline.of(channel);
    this.means = new MovingMean(draw);
    this.level = timeline.instants(LEVEL_S);
    this.edge = timeline.intervalInstants(channel);
  }

  /** The lowest level that was held in a stretch; infinite where it is too short for one. */
  double lowest(Stretch stretch) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int from = stretch.from(); from + level <= stretch.to(); from += level) {
      double mean = means.mean(from, from + level);
      lowest = mean < lowest ? mean : lowest;
    }
    return lowest;
  }

  /** Steps by some size, up and down, in a stretch of steady running. */
  List<Double> of(double size, Stretch run) {
    List<Double> found = new ArrayList<>();
    int i = run.from() + level;
    while (i + edge + level <= run.to()) {
      double change = means.mean(i + edge, i + edge + level) - means.mean(i - level, i);
      boolean isIt =
          Math.abs(Math.abs(change) - size) <= ALIKE * size
              && isFlat(i - level, i, size)
              && isFlat(i + edge, i + edge + level, size);
      if (isIt) {
        found.add(change);
      }
      i += isIt ? level : 1;
    }
    return found;
  }

  /** Whether a step by that size would have shown in a stretch, that is, the draw is so calm. */
  boolean wouldShow(double size, Stretch run) {
    int all = 0;
    int flat = 0;
    for (int from = run.from(); from + level <= run.to(); from += level) {
      all++;
      flat += isFlat(from, from + level, size) ? 1 : 0;
    }
    return all > 0 && flat >= MOSTLY * all;
  }

  private boolean isFlat(int from, int to, double size) {
    double mean = means.mean(from, to);
    return Arrays.stream(draw, from, to)
            .map(value -> Math.abs(value - mean))
            .filter(off -> !Double.isNaN(off))
            .average()
            .orElse(Double.NaN)
        <= FLAT * size;
  }
}
