package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * Loads on the heater's meter that are neither fan nor compressor, as a lamp or a chlorinator. They
 * come and go without regard to the heater: their draw also stands where no water moves, or with
 * the pool at its set temperature, or it comes and goes on top of the running compressor, beside
 * which the fan always runs; or it is clearly not what the fan draws before a start.
 */
final class OtherLoad {
  /** Levels so far apart, as a share, are one; ours: a load follows the voltage. */
  private static final double ALIKE = 0.1;

  /** And so far apart in any case; ours, as the least draw of a fan. */
  private static final double ALIKE_W = 25;

  private static final double ALIKE_A = 0.12;

  /** It stands for longer than a fan runs on after a stop (common practice: minutes), s. */
  private static final double STANDS_S = 600;

  /** Or than it runs on with the pool at its set temperature; ours, s. */
  private static final double STANDS_WITHOUT_CALL_S = 1800;

  /** So many steps, and as well up as down, are no chance; ours. */
  private static final int STEPS = 3;

  private final Evidence evidence;
  private final FanAlone fan;
  private final OwnFan own;
  private final double[] draw;
  private final double alike;
  private final LoadSteps steps;
  private final double rest;

  OtherLoad(Evidence evidence, Channel channel, FanAlone fan, OwnFan own, LoadSteps steps) {
    this.evidence = evidence;
    this.fan = fan;
    this.own = own;
    this.draw = evidence.timeline().of(channel);
    this.alike = channel == Channel.POWER ? ALIKE_W : ALIKE_A;
    this.steps = steps;
    this.rest = atRest(evidence.phaseGrid(), steps);
  }

  /** The lowest draw that was held with the compressor at rest; infinite where none was. */
  private static double atRest(PhaseGrid phases, LoadSteps steps) {
    return Stretch.where(phases.size(), i -> !phases.compressorRuns(i)).stream()
        .mapToDouble(steps::lowest)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Whether what is drawn over a spell of a fan alone is such a load. */
  boolean isIn(Stretch spell) {
    double drawn = spell.middle(draw);
    return own.isOther(spell)
        || fan.withAndWithoutWater().stream().anyMatch(one -> showsIt(one, drawn))
        || stepsBesideTheCompressor(drawn - rest);
  }

  /** Whether a level stands, alike, at a time at which no fan runs for want of heat. */
  private boolean showsIt(Stretch one, double drawn) {
    Timeline timeline = evidence.timeline();
    double other = one.middle(draw);
    if (!(Math.abs(other - drawn) <= Math.max(alike, ALIKE * drawn))) {
      return false;
    }
    List<Stretch> dry = fan.withoutWater(one);
    if (dry.stream().anyMatch(part -> part.durationS(timeline) >= STANDS_S)) {
      return true;
    }
    HeatCall call = HeatCall.over(evidence, one.from(), one.to());
    return one.durationS(timeline) >= STANDS_WITHOUT_CALL_S && dry.isEmpty() && call.isUnlikely();
  }

  private boolean stepsBesideTheCompressor(double step) {
    if (!(step >= alike)) {
      return false;
    }
    PhaseGrid phases = evidence.phaseGrid();
    List<Double> seen =
        Stretch.where(phases.size(), i -> phases.is(i, Phase.STEADY)).stream()
            .flatMap(run -> steps.of(step, run).stream())
            .toList();
    return seen.size() >= STEPS
        && seen.stream().anyMatch(change -> change > 0)
        && seen.stream().anyMatch(change -> change < 0);
  }
}
