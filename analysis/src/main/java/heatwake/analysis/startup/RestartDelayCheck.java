package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.control.RestartTooSoon;
import heatwake.analysis.timeline.Timeline;
import java.util.Comparator;
import java.util.List;

/** After a stop the compressor waits for its restart delay. */
final class RestartDelayCheck implements Check {
  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.RESTART_DELAY;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.POWER)
        && !timeline.has(Channel.CURRENT)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return notMeasured("no power, current or pressure-discharge reading");
    }
    Outcome outcome = new RestartTooSoon().evaluate(evidence);
    if (outcome instanceof Outcome.Flagged flagged) {
      return fail(flagged.flags().get(0).endMs(), flagged.flags().get(0).evidence());
    }
    if (outcome instanceof Outcome.NotEnoughData lacking) {
      return notMeasured(lacking.reason());
    }
    double delayS =
        evidence.recording().rig().heater().restartDelayS().orElse(RestartTooSoon.DEFAULT_DELAY_S);
    List<Cycle> restarted =
        evidence.cycles().stream()
            .filter(cycle -> cycle.stopMs().isPresent() && cycle.nextStartMs().isPresent())
            .toList();
    // Shorter ones were not raised: they stand beside a defrost, or were not seen from end to end.
    double leastS = delayS - RestartTooSoon.openS(evidence);
    return restarted.stream()
        .filter(cycle -> restS(cycle) >= leastS)
        .min(Comparator.comparingDouble(RestartDelayCheck::restS))
        .map(
            shortest ->
                pass(
                    shortest.nextStartMs().orElseThrow(),
                    "restarted "
                        + Wording.duration(restS(shortest))
                        + " after a stop; the restart delay is "
                        + Wording.duration(delayS)))
        .orElseGet(
            () ->
                notSeen(
                    restarted.isEmpty()
                        ? "a stop and a restart"
                        : "a stop and a restart that is not beside a defrost"));
  }

  private static double restS(Cycle cycle) {
    return (cycle.nextStartMs().orElseThrow() - cycle.stopMs().orElseThrow()) / 1e3;
  }
}
