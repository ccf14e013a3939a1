package heatwake.analysis.rule.control;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
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

  /** Some heaters rest the compressor shortly to turn a defrost on or off; common practice, s. */
  private static final double BESIDE_DEFROST_S = 180;

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
    return "power, current or pressure-discharge; heater.restart-delay (3 min are taken where the"
        + " rig states none)";
  }

  @Override
  public String limits() {
    return "A rest shorter than the restart delay by more than 10 s and what the time between"
        + " readings leaves open at its two ends. A rest beside a defrost does not count (some"
        + " heaters turn the valve at rest: common practice).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    OptionalDouble resolutionS = CompressorSight.resolutionS(evidence.timeline());
    if (resolutionS.isEmpty()) {
      return Outcome.notEnoughData("no power, current or pressure-discharge reading");
    }
    OptionalDouble stated = evidence.recording().rig().heater().restartDelayS();
    double delayS = stated.orElse(DEFAULT_DELAY_S);
    double openS = TIMER_S + (resolutionS.getAsDouble() > 2 ? 2 * resolutionS.getAsDouble() : 0);
    if (delayS <= openS) {
      return Outcome.notEnoughData(
          "readings every "
              + Wording.duration(resolutionS.getAsDouble())
              + " are too seldom to time a rest of "
              + Wording.duration(delayS));
    }
    List<Rest> tooShort = new ArrayList<>();
    for (int k = 0; k + 1 < evidence.cycles().size(); k++) {
      Cycle cycle = evidence.cycles().get(k);
      Cycle next = evidence.cycles().get(k + 1);
      if (cycle.stopMs().isPresent()) {
        Rest rest = new Rest(cycle.stopMs().getAsLong(), next.startMs(), next.startSeen());
        if (rest.lengthS() < delayS - openS && rest.isSeen(evidence)) {
          tooShort.add(rest);
        }
      }
    }
    return tooShort.isEmpty()
        ? Outcome.clear()
        : Outcome.flagged(flag(tooShort, delayS, stated.isPresent()));
  }

  private record Rest(long stopMs, long startMs, boolean startSeen) {
    double lengthS() {
      return (startMs - stopMs) / 1e3;
    }

    /**
     * Seen from end to end, and not beside a defrost. What is not known just before a start that
     * was seen is the water.
     */
    boolean isSeen(Evidence evidence) {
      Timeline timeline = evidence.timeline();
      for (PhaseSpan span : evidence.phases()) {
        boolean within = span.endMs() >= stopMs && span.startMs() <= startMs;
        boolean beside =
            span.endMs() >= stopMs - BESIDE_DEFROST_S * 1000
                && span.startMs() <= startMs + BESIDE_DEFROST_S * 1000;
        boolean silent =
            within
                && span.phase() == Phase.UNKNOWN
                && span.durationS() > timeline.stepS()
                && !(startSeen && span.endMs() == startMs);
        if (silent || (beside && span.phase() == Phase.DEFROST)) {
          return false;
        }
      }
      return true;
    }
  }

  private Flag flag(List<Rest> rests, double delayS, boolean stated) {
    double shortest = rests.stream().mapToDouble(Rest::lengthS).min().orElse(0);
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
