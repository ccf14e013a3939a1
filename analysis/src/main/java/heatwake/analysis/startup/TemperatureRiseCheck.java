package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** The water leaves warmer than it enters. */
final class TemperatureRiseCheck implements Check {
  /** Least rise of a heater that heats, K; common practice: 1 to 5 K. */
  private static final double LEAST_RISE_K = 0.5;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.TEMPERATURE_RISE;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return notMeasured("no water-in and water-out pair");
    }
    Optional<SteadySpan> steady =
        evidence.steady().stream().filter(span -> span.riseK().isPresent()).findFirst();
    if (steady.isEmpty()) {
      return notSeen("steady running of the compressor");
    }
    Estimate rise = steady.get().riseK().get();
    String text =
        "rise "
            + Wording.kelvin(rise)
            + (steady.get().flowM3PerS().isPresent()
                ? " at " + Wording.flow(steady.get().flowM3PerS().get().value())
                : "");
    long atMs = steady.get().endMs();
    if (Doubt.below(rise, LEAST_RISE_K)) {
      return fail(atMs, text + "; less than 0.5 K");
    }
    return rise.value() > Math.max(LEAST_RISE_K, rise.expanded())
        ? pass(atMs, text)
        : notSeen(text + ": too small beside its uncertainty to tell");
  }
}
