package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * What is left of the draw where the compressor stops, and has come with its start: no more than
 * half of it was drawn in a rest before, and nothing of its size came on beside the compressor
 * since. A lamp that comes on meanwhile shows as a step; what comes with the start is the fan.
 */
final class OnSinceTheStart {
  /** It is left by the stop itself, and not switched on later; ours, s. */
  private static final double WITH_THE_STOP_S = 60;

  /** The rest before the start is held so long (ours, as a restart delay at the least), s. */
  private static final double REST_S = 180;

  /** Between that rest and the start lies the fan's lead, no longer than this, s. */
  private static final double LEAD_S = 180;

  /** And draws less than this share of it; ours. */
  private static final double REST_SHARE = 0.5;

  /** The run is seen running steadily for this share of it, so that a step would have shown. */
  private static final double STEADY_SHARE = 0.8;

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final double[] draw;
  private final LoadSteps steps;

  OnSinceTheStart(Evidence evidence, FanDraw draw) {
    this.timeline = evidence.timeline();
    this.phases = evidence.phaseGrid();
    this.draw = timeline.of(draw.channel());
    this.steps = draw.steps();
  }

  /** Whether that is what stands over a stretch after a run of the compressor. */
  boolean isIn(Stretch left) {
    List<Stretch> runs = Stretch.where(left.from(), phases::compressorRuns);
    if (runs.isEmpty()) {
      return false;
    }
    Stretch run = runs.get(runs.size() - 1);
    double level = left.middle(draw);
    double restLevel = restBefore(run);
    return (left.from() - run.to()) * timeline.stepS() <= WITH_THE_STOP_S
        && restLevel < REST_SHARE * level
        && nothingCameOn(run, level - restLevel);
  }

  /** What was drawn in the rest before a run; NaN where none was seen. */
  private double restBefore(Stretch run) {
    int lead = timeline.instants(LEAD_S);
    return Stretch.where(run.from(), i -> phases.is(i, Phase.CIRCULATING)).stream()
        .filter(rest -> rest.durationS(timeline) >= REST_S)
        .filter(rest -> rest.to() >= run.from() - lead)
        .mapToDouble(rest -> rest.middle(draw))
        .reduce(Double.NaN, (before, last) -> last);
  }

  /** What comes on parts the steady running too, so it is looked at from end to end. */
  private boolean nothingCameOn(Stretch run, double size) {
    List<Stretch> steady =
        Stretch.where(run.to(), i -> i >= run.from() && phases.is(i, Phase.STEADY));
    int seen = steady.stream().mapToInt(Stretch::length).sum();
    if (seen < STEADY_SHARE * run.length()) {
      return false;
    }
    Stretch all = new Stretch(steady.get(0).from(), steady.get(steady.size() - 1).to());
    return steps.wouldShow(size, all)
        && steps.of(size, all).stream().noneMatch(change -> change > 0);
  }
}
