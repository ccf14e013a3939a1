package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * Fans that go on alone for an hour and more after a run of the compressor, with heat called for: a
 * compressor that starts now and then, or that has failed after it ran. A run on after a stop, and
 * a fan that thaws the coil, are over by then; a lamp or a crankcase heater is told by its draw, or
 * by when it comes on.
 */
final class AfterRuns {
  /** No fan thaws a coil, or runs on, for so long; ours, s. */
  private static final double LEAST_S = 3600;

  /** A crankcase heater comes on with the stop, a fan again after a rest of so long; ours, s. */
  private static final double REST_S = 60;

  /** So many such fans are no chance, where their draw does not tell; ours. */
  private static final int SEVERAL = 2;

  private final Evidence evidence;
  private final Timeline timeline;
  private final PhaseGrid phases;
  private final FanDraw draw;
  private final OnSinceTheStart since;

  AfterRuns(Evidence evidence, FanDraw draw) {
    this.evidence = evidence;
    this.timeline = evidence.timeline();
    this.phases = evidence.phaseGrid();
    this.draw = draw;
    this.since = new OnSinceTheStart(evidence, draw);
  }

  /**
   * Those that tell that the compressor should run; empty where they leave it open.
   *
   * @param fans times at which a fan runs alone
   * @param withinS longest wait from a stop to a start that is called for at once, s
   */
  List<Stretch> of(List<Stretch> fans, double withinS) {
    List<Stretch> waiting =
        fans.stream()
            .filter(fan -> fan.durationS(timeline) >= LEAST_S)
            .filter(fan -> restBeforeS(fan) <= withinS)
            .filter(this::isNoCrankcaseHeater)
            .filter(fan -> !draw.other().isIn(fan))
            .toList();
    List<Stretch> byLevel =
        waiting.stream()
            .filter(
                fan ->
                    (draw.own().isIn(fan) && call(fan).isBelowSetBy(0))
                        || (call(fan).calls() && since.isIn(fan)))
            .toList();
    List<Stretch> again =
        waiting.stream()
            .filter(fan -> restBeforeS(fan) >= REST_S)
            .filter(fan -> call(fan).calls())
            .toList();
    return again.size() >= SEVERAL ? again : byLevel;
  }

  /**
   * Whether it draws more, or is known by its lead or by a quiet rest, and the water calls for heat
   * beyond doubt.
   */
  private boolean isNoCrankcaseHeater(Stretch fan) {
    return !SmallDraw.isIn(evidence, draw.channel(), fan)
        || (call(fan).calls() && (draw.own().isLeadIn(fan) || draw.quiet().isBefore(fan)));
  }

  private HeatCall call(Stretch fan) {
    return HeatCall.over(evidence, fan.from(), fan.to());
  }

  /** From the last stop of the compressor; infinite without one. */
  private double restBeforeS(Stretch fan) {
    int i = fan.from() - 1;
    while (i >= 0 && !phases.compressorRuns(i)) {
      i--;
    }
    return i < 0 ? Double.POSITIVE_INFINITY : (fan.from() - 1 - i) * timeline.stepS();
  }
}
