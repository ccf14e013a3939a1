package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Set;

/** What is told of a compressor that does not start. */
final class NoCompressorFlag {
  private final String rule;
  private final Evidence evidence;
  private final MotorDraw draw;

  NoCompressorFlag(String rule, Evidence evidence, MotorDraw draw) {
    this.rule = rule;
    this.evidence = evidence;
    this.draw = draw;
  }

  /** The motor was tried over a rest without a fan before. */
  Flag triedFromRest(Stretch rest) {
    return flag(
        rest,
        rest,
        "The compressor did not start in "
            + Wording.duration(rest.durationS(evidence.timeline()))
            + "; "
            + draw.atRest(rest).words());
  }

  /**
   * The fan ran alone.
   *
   * @param own what the heater's fan is known to draw
   * @param times how often, from the first to the last
   */
  Flag fanAlone(OwnFan own, Stretch first, Stretch last, int times) {
    Timeline timeline = evidence.timeline();
    StartTries motor = draw.besideFan(last);
    StringBuilder text = new StringBuilder(120);
    boolean mayBeHeater = SmallDraw.isIn(evidence, motor.channel(), last) && !own.isLeadIn(last);
    if (mayBeHeater) {
      text.append("The compressor did not start in ");
    } else if (times > 1) {
      text.append(times).append(" times the fan ran without the compressor starting, last for ");
    } else {
      text.append("Fan ran without the compressor starting for ");
    }
    text.append(Wording.duration(last.durationS(timeline)));
    if (timeline.has(Channel.POWER)) {
      double powerW = last.mean(timeline.of(Channel.POWER));
      text.append(" (")
          .append(Math.round(powerW))
          .append(mayBeHeater ? " W: a small fan or a crankcase heater)" : " W)");
    }
    if (motor.areSeveral()) {
      text.append("; ").append(motor.words());
    }
    return flag(first, last, text.toString());
  }

  private Flag flag(Stretch first, Stretch last, String seen) {
    Timeline timeline = evidence.timeline();
    HeatCall call = HeatCall.over(evidence, first.from(), last.to());
    StringBuilder text = new StringBuilder(seen);
    call.belowSetK()
        .ifPresent(
            below ->
                text.append(", water ")
                    .append(Wording.kelvin(below))
                    .append(" below the set temperature"));
    return new Flag(
        rule,
        Side.ELECTRICAL,
        Severity.ALARM,
        timeline.timeMs(first.from()),
        timeline.timeMs(last.to() - 1),
        text.toString(),
        List.of(
            "start or run capacitor, or contactor, failed",
            "compressor overload or high-pressure switch open",
            "compressor winding or inverter failed",
            "control holds it back: fault code, wrong mode"),
        "Read the heater's fault memory; have a licensed electrician measure at contactor, capacitor"
            + " and overload.",
        Set.of(draw.channel()));
  }
}
