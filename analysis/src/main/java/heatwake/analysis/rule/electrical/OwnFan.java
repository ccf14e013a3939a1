package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
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

  private final double[] draw;
  private final List<Double> levels;

  private OwnFan(double[] draw, List<Double> levels) {
    this.draw = draw;
    this.levels = levels;
  }

  /**
   * Looks at every start and stop.
   *
   * @param interval instants from one reading of the draw to the next
   */
  static OwnFan seenIn(Timeline timeline, PhaseGrid phases, double[] draw, int interval) {
    List<Double> levels =
        Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN)).stream()
            .filter(one -> one.durationS(timeline) <= SHORT_S)
            .filter(one -> one.length() >= READINGS * interval)
            .filter(one -> one.from() > 0 && one.to() < phases.size())
            .filter(one -> phases.compressorRuns(one.from() - 1) != phases.compressorRuns(one.to()))
            .map(one -> MotorDraw.middle(draw, one))
            .toList();
    return new OwnFan(draw, levels);
  }

  /** Whether a level that stands over a stretch is the fan's. */
  boolean isIn(Stretch stretch) {
    double level = MotorDraw.middle(draw, stretch);
    return levels.stream().anyMatch(own -> Math.abs(level - own) <= ALIKE * own);
  }
}
