package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * What the heater's own fan draws: seen where it shortly leads a start of the compressor out of a
 * rest, or shortly runs on after a stop into one.
 */
final class OwnFan {
  /** A fan leads a start, and mostly runs on, no longer than this (common practice), s. */
  private static final double SHORT_S = 180;

  /** So many readings show its level; ours. */
  private static final int READINGS = 2;

  /** Levels so far apart, as a share, are one; ours: a fan follows the voltage and the wind. */
  private static final double ALIKE = 0.1;

  /** And from here on they are two; ours. */
  private static final double UNLIKE = 0.3;

  private final double[] draw;
  private final List<Double> levels;

  private OwnFan(double[] draw, List<Double> levels) {
    this.draw = draw;
    this.levels = levels;
  }

  /** Looks at every start and stop, by power or current. */
  static OwnFan seenIn(Evidence evidence, Channel channel) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    double[] draw = timeline.of(channel);
    int interval = timeline.intervalInstants(channel);
    List<Double> levels =
        Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN)).stream()
            .filter(one -> one.durationS(timeline) <= SHORT_S)
            .filter(one -> one.length() >= READINGS * interval)
            .filter(one -> one.from() > 0 && one.to() < phases.size())
            .filter(one -> phases.compressorRuns(one.from() - 1) != phases.compressorRuns(one.to()))
            .filter(one -> isLevel(draw, one))
            .map(one -> MotorDraw.middle(draw, one))
            .toList();
    return new OwnFan(draw, levels);
  }

  /** Not a climb, or the line from one reading to the next. */
  private static boolean isLevel(double[] draw, Stretch one) {
    int middle = (one.from() + one.to()) / 2;
    double early = MotorDraw.middle(draw, new Stretch(one.from(), middle));
    double late = MotorDraw.middle(draw, new Stretch(middle, one.to()));
    return Math.abs(late - early) <= ALIKE * early;
  }

  /** Whether a level that stands over a stretch is the fan's. */
  boolean isIn(Stretch stretch) {
    double level = MotorDraw.middle(draw, stretch);
    return levels.stream().anyMatch(own -> Math.abs(level - own) <= ALIKE * own);
  }

  /** Whether the fan's level is known, and what stands over a stretch is clearly another. */
  boolean isOther(Stretch stretch) {
    double level = MotorDraw.middle(draw, stretch);
    return !levels.isEmpty()
        && levels.stream().allMatch(own -> Math.abs(level - own) > UNLIKE * own);
  }
}
