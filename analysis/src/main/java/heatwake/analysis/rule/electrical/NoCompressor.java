package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.control.RestartTooSoon;
import heatwake.analysis.rule.water.MeasuredFlow;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The fan runs and heat is called for, but the compressor does not start. */
public final class NoCompressor implements Rule {
  /**
   * A fan alone for this long waits for no delay; common practice: a start follows in seconds, s.
   */
  private static final double FAN_ALONE_S = 600;

  /** So many short tries count; ours. */
  private static final int TRIES = 3;

  private static final double THAWS_WITHIN_S = 3600;

  /**
   * Any thermostat calls for heat with the water this far below the set temperature; common
   * practice: differentials of 0.3 to 2 K, K.
   */
  private static final double CALLS_FOR_CERTAIN_K = 2.5;

  @Override
  public String id() {
    return "no-compressor";
  }

  @Override
  public String summary() {
    return "The fan runs and heat is called for, but the compressor does not start.";
  }

  @Override
  public String needs() {
    return "power or current; pool.setpoint and a water temperature make the call for heat certain";
  }

  @Override
  public String limits() {
    return "Fan alone with water moving for more than 10 min and more than twice the restart delay"
        + " (a start follows the fan in seconds: common practice), or three tries of 20 s or more in"
        + " a row (ours), with the water below the set temperature where that is known; right after a"
        + " compressor run only where it is known. Three short draws above half of the running"
        + " compressor's, or without a fan before them above 1.2 of it, are tries of the control (ours; a"
        + " motor that stalls draws more than one that runs: common practice), which call for heat by"
        + " themselves. A draw of up to 90 W may be a crankcase heater (40 to 80 W: common practice) and"
        + " shows no call: there the water has to be more than 2.5 K below the set temperature"
        + " (differentials of thermostats are 0.3 to 2 K: common practice), and no run of the compressor"
        + " may be seen, without such tries. With less flow than the heater's minimum beyond doubt only"
        + " the tries of the control count, since a heater is held back then. In air under 7 °C only after 60 min (a fan may thaw the coil: common practice).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.POWER) && !timeline.has(Channel.CURRENT)) {
      return Outcome.notEnoughData("no power or current reading, so the fan is not seen");
    }
    MotorDraw draw = MotorDraw.in(evidence);
    FanAlone fan = FanAlone.in(evidence);
    OtherLoad other = new OtherLoad(evidence, draw.channel(), fan);
    double delayS =
        evidence.recording().rig().heater().restartDelayS().orElse(RestartTooSoon.DEFAULT_DELAY_S);
    double longS = Math.max(FAN_ALONE_S, 2 * delayS);
    int tries = 0;
    Stretch firstTry = null;
    for (Stretch spell : fan.spells()) {
      StartTries motor = draw.besideFan(spell);
      // The end of the run may cut off one more try.
      if (fan.endsInAStart(spell) && !(motor.areSeveral() && fan.isCutOffAfter(spell))) {
        continue;
      }
      HeatCall call = HeatCall.over(evidence, spell.from(), spell.to());
      // After a compressor run the pool may simply be warm: then only a known set temperature, or
      // the tries of the control, show a call.
      boolean calls =
          motor.areSeveral()
              || (call.mayCall() && (call.belowSetK().isPresent() || !fan.followsARun(spell)));
      double seconds = spell.durationS(timeline);
      boolean isProof =
          motor.areSeveral()
              || (hasItsFlow(evidence, spell)
                  && !other.isIn(spell)
                  && (!SmallDraw.isIn(evidence, draw.channel(), spell)
                      || isCertain(evidence, call)));
      if (!calls || !isProof || (fan.mayThaw(spell) && seconds < THAWS_WITHIN_S)) {
        continue;
      }
      if (seconds >= longS) {
        return Outcome.flagged(
            flag(evidence, spell, spell, draw, fanAlone(evidence, spell, 1, motor)));
      }
      if (firstTry != null && fan.compressorRan(firstTry.from(), spell.from())) {
        tries = 0;
      }
      firstTry = tries == 0 ? spell : firstTry;
      tries++;
      if (tries >= TRIES && !fan.compressorRan(spell.to(), timeline.size())) {
        return Outcome.flagged(
            flag(evidence, firstTry, spell, draw, fanAlone(evidence, spell, tries, motor)));
      }
    }
    return triedFromRest(evidence, fan, draw)
        .or(() -> afterRuns(evidence, fan, draw, other, longS))
        .map(Outcome::flagged)
        .orElseGet(Outcome::clear);
  }

  private Optional<Flag> afterRuns(
      Evidence evidence, FanAlone fan, MotorDraw draw, OtherLoad other, double longS) {
    List<Stretch> fans =
        fan.spells().stream().filter(spell -> hasItsFlow(evidence, spell)).toList();
    List<Stretch> found = new AfterRuns(evidence, draw, other).of(fans, longS);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Stretch last = found.get(found.size() - 1);
    String seen = fanAlone(evidence, last, found.size(), draw.besideFan(last));
    return Optional.of(flag(evidence, found.get(0), last, draw, seen));
  }

  /** Whether nothing shows that too little water holds the heater back. */
  private static boolean hasItsFlow(Evidence evidence, Stretch spell) {
    return MeasuredFlow.in(evidence).filter(flow -> flow.isLow(spell)).isEmpty();
  }

  /** Whether heat is called for though nothing but the water says so. */
  private static boolean isCertain(Evidence evidence, HeatCall call) {
    return call.calls()
        && call.belowSetK().getAsDouble() > CALLS_FOR_CERTAIN_K
        && evidence.phases().stream().noneMatch(span -> span.phase().compressorRuns());
  }

  /** The last rest of the run, if the motor was tried in it without a fan before. */
  private Optional<Flag> triedFromRest(Evidence evidence, FanAlone fan, MotorDraw draw) {
    return fan.lastRest()
        .filter(last -> draw.atRest(last).areSeveral())
        .map(
            last ->
                flag(
                    evidence,
                    last,
                    last,
                    draw,
                    "The compressor did not start in "
                        + Wording.duration(last.durationS(evidence.timeline()))
                        + "; "
                        + draw.atRest(last).words()));
  }

  private static String fanAlone(Evidence evidence, Stretch last, int tries, StartTries motor) {
    Timeline timeline = evidence.timeline();
    StringBuilder text = new StringBuilder(120);
    boolean mayBeHeater = SmallDraw.isIn(evidence, motor.channel(), last);
    if (mayBeHeater) {
      text.append("The compressor did not start in ");
    } else if (tries > 1) {
      text.append(tries).append(" times the fan ran without the compressor starting, last for ");
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
    return motor.areSeveral()
        ? text.append("; ").append(motor.words()).toString()
        : text.toString();
  }

  private Flag flag(Evidence evidence, Stretch first, Stretch last, MotorDraw draw, String seen) {
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
        id(),
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
