package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.control.RestartTooSoon;
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
        + " compressor, or that differs by more than 30 % from the fan seen before a start (ours). Nor is it"
        + " a fan with whose draw the water leaves warmer, or the two gauges part by more than 5 % of the"
        + " standing pressure (ours): the compressor turns then, however little it draws. Where"
        + " nothing else tells of the water it stands once both pipes have moved together by 0.6 K or"
        + " more in 20 min (a pool does some tenths of a kelvin in an hour: common practice), until one of"
        + " them changes by 1 K within 2 min (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<FanAlone> seen = FanAlone.in(evidence);
    if (seen.isEmpty()) {
      return Outcome.notEnoughData("no power or current reading, so the fan is not seen");
    }
    FanAlone fan = seen.get();
    MotorDraw motor = MotorDraw.in(evidence);
    NoCompressorFlag told = new NoCompressorFlag(id(), evidence, motor);
    Optional<FanDraw> draw =
        fan.spells().isEmpty() ? Optional.empty() : Optional.of(FanDraw.of(evidence, fan));
    return draw.flatMap(one -> inVain(evidence, one, motor, told))
        .or(
            () ->
                fan.lastRest()
                    .filter(rest -> motor.atRest(rest).areSeveral())
                    .map(told::triedFromRest))
        .or(() -> draw.flatMap(one -> afterRuns(evidence, one, motor, told)))
        .map(Outcome::flagged)
        .orElseGet(Outcome::clear);
  }

  /** One fan that waited for long, or some tries in a row. */
  private static Optional<Flag> inVain(
      Evidence evidence, FanDraw draw, MotorDraw motor, NoCompressorFlag told) {
    Timeline timeline = evidence.timeline();
    UnansweredCall unanswered = new UnansweredCall(evidence, draw, motor);
    FanAlone fan = draw.alone();
    double longS = longS(evidence);
    int tries = 0;
    Stretch firstTry = null;
    for (Stretch spell : fan.spells()) {
      if (!unanswered.isProvedBy(spell)) {
        continue;
      }
      if (spell.durationS(timeline) >= longS) {
        return Optional.of(told.fanAlone(draw.own(), spell, spell, 1));
      }
      if (firstTry != null && fan.compressorRan(firstTry.from(), spell.from())) {
        tries = 0;
      }
      firstTry = tries == 0 ? spell : firstTry;
      tries++;
      if (tries >= TRIES && !fan.compressorRan(spell.to(), timeline.size())) {
        return Optional.of(told.fanAlone(draw.own(), firstTry, spell, tries));
      }
    }
    return Optional.empty();
  }

  private static Optional<Flag> afterRuns(
      Evidence evidence, FanDraw draw, MotorDraw motor, NoCompressorFlag told) {
    UnansweredCall unanswered = new UnansweredCall(evidence, draw, motor);
    List<Stretch> fans = draw.alone().spells().stream().filter(unanswered::hasItsFlow).toList();
    List<Stretch> found = new AfterRuns(evidence, draw).of(fans, longS(evidence));
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(
            told.fanAlone(draw.own(), found.get(0), found.get(found.size() - 1), found.size()));
  }

  /** From so long on a fan alone waits for no delay, s. */
  private static double longS(Evidence evidence) {
    double delayS =
        evidence.recording().rig().heater().restartDelayS().orElse(RestartTooSoon.DEFAULT_DELAY_S);
    return Math.max(FAN_ALONE_S, 2 * delayS);
  }
}
