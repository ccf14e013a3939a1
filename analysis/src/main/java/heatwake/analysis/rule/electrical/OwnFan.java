package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.ShortFan;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What the heater's own fan draws: seen where it shortly leads a start of the compressor out of a
 * rest, or shortly runs on after a stop into one.
 */
final class OwnFan {
  /** So many readings show its level; ours. */
  private static final int READINGS = 2;

  /** Levels so far apart, as a share, are one; ours: a fan follows the voltage and the wind. */
  private static final double ALIKE = 0.1;

  /** And from here on they are two; ours. */
  private static final double UNLIKE = 0.3;

  /** A rest before a lead is held so long (ours, as a restart delay at the least), s. */
  private static final double REST_S = 180;

  /** And draws less than this share of it: a crankcase heater would be on by then; ours. */
  private static final double REST_SHARE = 0.5;

  private final double[] draw;
  private final List<Double> levels;
  private final List<Double> leads;

  private OwnFan(double[] draw, List<Double> levels, List<Double> leads) {
    this.draw = draw;
    this.levels = levels;
    this.leads = leads;
  }

  /** Looks at every start and stop, by power or current. */
  static OwnFan seenIn(Evidence evidence, Channel channel) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    double[] draw = timeline.of(channel);
    int interval = timeline.intervalInstants(channel);
    List<ShortFan> fans =
        ShortFan.in(evidence).stream()
            .filter(fan -> fan.stretch().length() >= READINGS * interval)
            .map(fan -> new ShortFan(pastTheFlank(fan.stretch(), interval), fan.leads()))
            .filter(fan -> isLevel(draw, fan.stretch()))
            .toList();
    int rest = timeline.instants(REST_S);
    return new OwnFan(
        draw,
        fans.stream().map(fan -> fan.stretch().middle(draw)).toList(),
        fans.stream()
            .filter(ShortFan::leads)
            .map(ShortFan::stretch)
            .filter(one -> isOutOfARest(draw, phases, one, rest))
            .map(one -> one.middle(draw))
            .toList());
  }

  /** Whether the heater rested for long before, and drew far less. */
  private static boolean isOutOfARest(double[] draw, PhaseGrid phases, Stretch one, int rest) {
    Stretch before = new Stretch(one.from() - rest, one.from());
    return before.from() >= 0
        && IntStream.range(before.from(), before.to()).noneMatch(phases::compressorRuns)
        && before.middle(draw) < REST_SHARE * one.middle(draw);
  }

  /** Without what may lie on the line from the reading before it to its first. */
  private static Stretch pastTheFlank(Stretch one, int interval) {
    return new Stretch(one.from() + interval - 1, one.to());
  }

  /** Not a climb, or the line from one reading to the next. */
  private static boolean isLevel(double[] draw, Stretch one) {
    int middle = (one.from() + one.to()) / 2;
    double early = new Stretch(one.from(), middle).middle(draw);
    double late = new Stretch(middle, one.to()).middle(draw);
    return Math.abs(late - early) <= ALIKE * early;
  }

  /** Whether a level that stands over a stretch is the fan's. */
  boolean isIn(Stretch stretch) {
    double level = stretch.middle(draw);
    return levels.stream().anyMatch(own -> Math.abs(level - own) <= ALIKE * own);
  }

  /**
   * Whether it is what led a start out of a long rest that drew far less. A crankcase heater, which
   * may draw as little as a small fan, is on in such a rest.
   */
  boolean isLeadIn(Stretch stretch) {
    double level = stretch.middle(draw);
    return leads.stream().anyMatch(own -> Math.abs(level - own) <= ALIKE * own);
  }

  /** Whether the fan's level is known, and what stands over a stretch is clearly another. */
  boolean isOther(Stretch stretch) {
    double level = stretch.middle(draw);
    return !levels.isEmpty()
        && levels.stream().allMatch(own -> Math.abs(level - own) > UNLIKE * own);
  }
}
