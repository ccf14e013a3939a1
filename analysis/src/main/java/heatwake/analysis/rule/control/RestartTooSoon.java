package heatwake.analysis.rule.control;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** The compressor restarts before the restart delay is over. */
public final class RestartTooSoon implements Rule {
  /**
   * Restart delay where the rig states none; common practice: 3 to 5 min, the shortest taken, s.
   */
  public static final double DEFAULT_DELAY_S = 180;

  /** Timers and phase edges are right to this, s; ours. */
  private static final double TIMER_S = 10;

  @Override
  public String id() {
    return "restart-too-soon";
  }

  @Override
  public String summary() {
    return "The compressor restarts before the restart delay is over.";
  }

  @Override
  public String needs() {
    return "power, current, pressure-discharge or energy; heater.restart-delay (3 min are taken where the"
        + " rig states none)";
  }

  @Override
  public String limits() {
    return "A rest shorter than the restart delay by more than 10 s and what the time between"
        + " readings leaves open at its two ends (by an energy counter also the time that the running heater"
        + " takes for a step of it), after a run of two readings or more. A rest beside a defrost does not count (some"
        + " heaters turn the valve at rest: common practice). Where water-in and water-out, which show"
        + " a defrost, are not both read meanwhile and no probe shows air above 12 °C, rests of up"
        + " to 3 min count only where three fall within 30 min, closer than defrosts come (30 to 90"
        + " min: common practice).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    OptionalDouble resolutionS = CompressorSight.resolutionS(evidence);
    if (resolutionS.isEmpty()) {
      return Outcome.notEnoughData("no power, current, pressure-discharge or energy reading");
    }
    OptionalDouble stated = evidence.recording().rig().heater().restartDelayS();
    double delayS = stated.orElse(DEFAULT_DELAY_S);
    double openS = openS(resolutionS.getAsDouble());
    if (delayS <= openS) {
      return Outcome.notEnoughData(
          "readings every "
              + Wording.duration(CompressorSight.everyS(evidence.timeline()).orElseThrow())
              + (CompressorSight.isCounted(evidence.timeline()) ? " of a counter" : "")
              + " are too seldom to time a rest of "
              + Wording.duration(delayS));
    }
    List<ShortRest> tooShort = new ArrayList<>();
    double leastS = CompressorSight.leastS(evidence.timeline());
    for (int k = 0; k + 1 < evidence.cycles().size(); k++) {
      Cycle cycle = evidence.cycles().get(k);
      Cycle next = evidence.cycles().get(k + 1);
      if (cycle.stopMs().isPresent() && isMoreThanAReading(cycle, resolutionS.getAsDouble())) {
        ShortRest rest = new ShortRest(cycle.stopMs().getAsLong(), next.startMs());
        if (rest.lengthS() >= leastS && rest.lengthS() < delayS - openS && rest.isSeen(evidence)) {
          tooShort.add(rest);
        }
      }
    }
    List<ShortRest> left = ValveRests.leftOut(tooShort, evidence.timeline());
    return left.isEmpty()
        ? Outcome.clear()
        : Outcome.flagged(flag(left, delayS, stated.isPresent()));
  }

  /** How much shorter than the delay a rest may look, s; 0 where nothing times one. */
  public static double openS(Evidence evidence) {
    OptionalDouble resolutionS = CompressorSight.resolutionS(evidence);
    return resolutionS.isPresent() ? openS(resolutionS.getAsDouble()) : 0;
  }

  private static double openS(double resolutionS) {
    return TIMER_S + (resolutionS > 2 ? 2 * resolutionS : 0);
  }

  /** What a single slow reading shows is no run that stopped. */
  private static boolean isMoreThanAReading(Cycle cycle, double resolutionS) {
    double ranS = (cycle.stopMs().orElseThrow() - cycle.startMs()) / 1e3;
    return resolutionS <= 2 || ranS > 2 * resolutionS;
  }

  private Flag flag(List<ShortRest> rests, double delayS, boolean stated) {
    double shortest = rests.stream().mapToDouble(ShortRest::lengthS).min().orElse(0);
    String text =
        "Restarted "
            + Wording.duration(shortest)
            + " after a stop; the restart delay is "
            + Wording.duration(delayS)
            + (stated ? "" : " (usual, none stated)")
            + (rests.size() > 1 ? "; " + rests.size() + " rests too short" : "");
    return new Flag(
        id(),
        Side.CONTROL,
        Severity.WARNING,
        rests.get(0).stopMs(),
        rests.get(rests.size() - 1).startMs(),
        text,
        List.of(
            "restart delay not set, or bypassed in the control",
            "contactor drops out: loose control wire, low supply voltage",
            "a protection that resets itself at once"),
        "Read the restart delay set in the control; have a licensed electrician look at contactor and"
            + " control wiring.",
        Set.of());
  }
}
