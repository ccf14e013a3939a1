package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.control.RestartTooSoon;
import heatwake.analysis.rule.water.MeasuredFlow;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

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

  /** Most do with the water this far below, K; common practice, as above. */
  private static final double MOSTLY_CALLS_K = 1;

  /**
   * A fan that comes on out of a rest in which no crankcase heater was on waits so long, s; ours.
   */
  private static final double OUT_OF_A_REST_S = 1200;

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
        + " may be seen, without such tries; or it has to be, within 10 %, what led a start out of a rest"
        + " of 3 min that drew less than half of it, and to stand for 60 min with the water 0.5 K or more"
        + " below the set temperature beyond doubt (a crankcase heater is on in such a rest: common"
        + " practice), or by 1 K beyond doubt for 20 min out of a rest of 3 min with the supply on that drew less than half of it, in air above 18 °C"
        + " (no thermostat switches a crankcase heater on in warmer air than 10 to 18 °C: common practice). With less flow than the heater's minimum beyond doubt only"
        + " the tries of the control count, since a heater is held back then. In air under 7 °C only after 60 min (a fan may thaw the coil: common practice)."
        + " A fan that goes on, or comes on within that time of a stop, for 60 min counts though a start"
        + " follows, or though the water is little below the set temperature, if its draw is within 10 %"
        + " that of the fan before a start or just after a stop, or if there are two or more of them"
        + " after rests of 1 min or more (ours), or if it is left by the stop itself, with the water 0.5 K or more below the set"
        + " temperature beyond doubt, a rest before the start drew less than half of it, and nothing of its size came on beside"
        + " the steadily running compressor (ours; up to 90 W only in air above 18 °C, as above). No fan is a load on the meter, as a lamp or a"
        + " chlorinator: a draw, within 10 %, that also stands for 10 min while no water moves, or for 30 min with the"
        + " water less than 0.3 K below the set temperature (differentials of thermostats: common"
        + " practice), that steps three times or more by its size, within 25 %, beside the steadily running"
        + " compressor, or that differs by more than 30 % from the fan seen before a start (ours). Where"
        + " nothing else tells of the water it stands once both pipes have moved together by 0.6 K or"
        + " more in 20 min (a pool does some tenths of a kelvin in an hour: common practice), until one of"
        + " them changes by 1 K within 2 min (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Optional<FanDraw> seen = FanDraw.in(evidence);
    if (seen.isEmpty()) {
      return Outcome.notEnoughData("no power or current reading, so the fan is not seen");
    }
    MotorDraw draw = MotorDraw.in(evidence);
    FanAlone fan = seen.get().alone();
    OtherLoad other = seen.get().other();
    NoCompressorFlag told = new NoCompressorFlag(id(), evidence, draw, seen.get().own());
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
                      || isCertain(evidence, call)
                      || (seconds >= OUT_OF_A_REST_S
                          && isLikely(evidence, seen.get(), spell, call))));
      if (!calls || !isProof || (fan.mayThaw(spell) && seconds < THAWS_WITHIN_S)) {
        continue;
      }
      if (seconds >= longS) {
        return Outcome.flagged(told.fanAlone(spell, spell, 1));
      }
      if (firstTry != null && fan.compressorRan(firstTry.from(), spell.from())) {
        tries = 0;
      }
      firstTry = tries == 0 ? spell : firstTry;
      tries++;
      if (tries >= TRIES && !fan.compressorRan(spell.to(), timeline.size())) {
        return Outcome.flagged(told.fanAlone(firstTry, spell, tries));
      }
    }
    AfterRuns afterRuns = new AfterRuns(evidence, seen.get());
    return fan.lastRest()
        .filter(last -> draw.atRest(last).areSeveral())
        .map(told::triedFromRest)
        .or(() -> afterRuns(evidence, fan, afterRuns, longS, told))
        .map(Outcome::flagged)
        .orElseGet(Outcome::clear);
  }

  private static Optional<Flag> afterRuns(
      Evidence evidence, FanAlone fan, AfterRuns afterRuns, double longS, NoCompressorFlag told) {
    List<Stretch> fans =
        fan.spells().stream().filter(spell -> hasItsFlow(evidence, spell)).toList();
    List<Stretch> found = afterRuns.of(fans, longS);
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(told.fanAlone(found.get(0), found.get(found.size() - 1), found.size()));
  }

  /** Whether nothing shows that too little water holds the heater back. */
  private static boolean hasItsFlow(Evidence evidence, Stretch spell) {
    return MeasuredFlow.in(evidence).filter(flow -> flow.isLow(spell)).isEmpty();
  }

  /** Whether heat is called for though nothing but the water says so. */
  private static boolean isCertain(Evidence evidence, HeatCall call) {
    return call.calls()
        && call.belowSetK().getAsDouble() > CALLS_FOR_CERTAIN_K
        && neverRan(evidence);
  }

  /** Whether the water says so, and what draws so little is no crankcase heater. */
  private static boolean isLikely(Evidence evidence, FanDraw draw, Stretch spell, HeatCall call) {
    return call.isBelowSetBy(MOSTLY_CALLS_K) && neverRan(evidence) && draw.quiet().isBefore(spell);
  }

  private static boolean neverRan(Evidence evidence) {
    return evidence.phases().stream().noneMatch(span -> span.phase().compressorRuns());
  }
}
