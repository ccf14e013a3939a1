package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.control.RestartTooSoon;
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

  /** Short tries count from this length, s, and this number; ours. */
  private static final double TRY_S = 20;

  private static final int TRIES = 3;

  /** After a compressor stop a fan may run on this long; common practice, s. */
  private static final double RUN_ON_S = 300;

  /** In air colder than this a fan may thaw the coil by itself; common practice, K (7 Cel). */
  private static final double THAWS_BELOW_K = 273.15 + 7;

  private static final double THAWS_WITHIN_S = 3600;

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
        + " themselves. In air under 7 °C only after 60 min (a fan may thaw the coil: common practice).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.POWER) && !timeline.has(Channel.CURRENT)) {
      return Outcome.notEnoughData("no power or current reading, so the fan is not seen");
    }
    Channel draw = timeline.has(Channel.POWER) ? Channel.POWER : Channel.CURRENT;
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    Track moves = WaterMovement.of(timeline);
    double delayS =
        evidence.recording().rig().heater().restartDelayS().orElse(RestartTooSoon.DEFAULT_DELAY_S);
    double longS = Math.max(FAN_ALONE_S, 2 * delayS);
    int tries = 0;
    Stretch firstTry = null;
    for (Stretch spell : spells(timeline, phases, moves)) {
      boolean motorTries = StartTries.besideFan(spell, evidence, draw).areSeveral();
      // The end of the run may cut off one more try.
      if (startsAfter(phases, spell) && !(motorTries && isCutOff(timeline, spell))) {
        continue;
      }
      HeatCall call = HeatCall.over(evidence, spell.from(), spell.to());
      // After a compressor run the pool may simply be warm: then only a known set temperature, or
      // the tries of the control, show a call.
      boolean calls =
          motorTries
              || (call.mayCall()
                  && (call.belowSetK().isPresent() || !ranJustBefore(phases, spell.from())));
      double seconds = spell.durationS(timeline);
      if (!calls || (airIsCold(timeline, spell) && seconds < THAWS_WITHIN_S)) {
        continue;
      }
      if (seconds >= longS) {
        return Outcome.flagged(flag(evidence, spell, spell, fanAlone(evidence, spell, 1)));
      }
      if (firstTry != null && compressorRan(phases, firstTry.from(), spell.from())) {
        tries = 0;
      }
      firstTry = tries == 0 ? spell : firstTry;
      tries++;
      if (tries >= TRIES && !compressorRan(phases, spell.to(), phases.size())) {
        return Outcome.flagged(flag(evidence, firstTry, spell, fanAlone(evidence, spell, tries)));
      }
    }
    return triedFromRest(evidence, phases, moves, draw)
        .map(Outcome::flagged)
        .orElseGet(Outcome::clear);
  }

  /** The last rest of the run, if the motor was tried in it without a fan before. */
  private Optional<Flag> triedFromRest(
      Evidence evidence, PhaseGrid phases, Track moves, Channel draw) {
    List<Stretch> rests =
        Stretch.where(phases.size(), i -> !phases.compressorRuns(i) && !moves.no(i));
    if (rests.isEmpty() || compressorRan(phases, rests.get(rests.size() - 1).to(), phases.size())) {
      return Optional.empty();
    }
    Stretch last = rests.get(rests.size() - 1);
    StartTries motor = StartTries.atRest(last, evidence, draw);
    return motor.areSeveral()
        ? Optional.of(
            flag(
                evidence,
                last,
                last,
                "The compressor did not start in "
                    + Wording.duration(last.durationS(evidence.timeline()))
                    + "; "
                    + motor.words(draw)))
        : Optional.empty();
  }

  /** Fan alone, not running on after a stop, and not known to be without water. */
  private static List<Stretch> spells(Timeline timeline, PhaseGrid phases, Track moves) {
    int runOn = (int) (RUN_ON_S / timeline.stepS());
    return Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN) && !moves.no(i)).stream()
        .filter(spell -> spell.durationS(timeline) >= TRY_S)
        .filter(spell -> spell.length() > runOn || !ranJustBefore(phases, spell.from()))
        .toList();
  }

  private static boolean ranJustBefore(PhaseGrid phases, int from) {
    return from > 0 && phases.compressorRuns(from - 1);
  }

  private static boolean startsAfter(PhaseGrid phases, Stretch spell) {
    return spell.to() < phases.size() && phases.compressorRuns(spell.to());
  }

  /** Whether what follows is one more try, or a start, that the end of the run cuts off. */
  private static boolean isCutOff(Timeline timeline, Stretch spell) {
    return timeline.size() - spell.to() <= timeline.instants(TRY_S) + 1;
  }

  private static boolean compressorRan(PhaseGrid phases, int from, int to) {
    for (int i = from; i < to; i++) {
      if (phases.compressorRuns(i)) {
        return true;
      }
    }
    return false;
  }

  private static boolean airIsCold(Timeline timeline, Stretch spell) {
    for (Channel channel : List.of(Channel.AIR_IN, Channel.AIR_AMBIENT)) {
      double air = spell.mean(timeline.of(channel));
      if (!Double.isNaN(air)) {
        return air < THAWS_BELOW_K;
      }
    }
    return false;
  }

  private static String fanAlone(Evidence evidence, Stretch last, int tries) {
    Timeline timeline = evidence.timeline();
    StringBuilder text = new StringBuilder(120);
    if (tries > 1) {
      text.append(tries).append(" times the fan ran without the compressor starting, last for ");
    } else {
      text.append("Fan ran without the compressor starting for ");
    }
    text.append(Wording.duration(last.durationS(timeline)));
    if (timeline.has(Channel.POWER)) {
      double powerW = last.mean(timeline.of(Channel.POWER));
      text.append(" (").append(Math.round(powerW)).append(" W)");
    }
    Channel draw = timeline.has(Channel.POWER) ? Channel.POWER : Channel.CURRENT;
    StartTries motor = StartTries.besideFan(last, evidence, draw);
    return motor.areSeveral()
        ? text.append("; ").append(motor.words(draw)).toString()
        : text.toString();
  }

  private Flag flag(Evidence evidence, Stretch first, Stretch last, String seen) {
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
        Set.of(timeline.has(Channel.POWER) ? Channel.POWER : Channel.CURRENT));
  }
}
