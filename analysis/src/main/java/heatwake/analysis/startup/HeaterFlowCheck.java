package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** The bypass sends as much water through the heater as its nameplate asks for. */
final class HeaterFlowCheck implements Check {
  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.HEATER_FLOW;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Heater heater = evidence.recording().rig().heater();
    if (heater.flowMinM3PerS().isEmpty() && heater.flowMaxM3PerS().isEmpty()) {
      return notMeasured("no heater.flow-min and heater.flow-max in the rig");
    }
    if (!HeaterFlowProbes.areThere(evidence)) {
      return notMeasured(HeaterFlowProbes.MISSING);
    }
    if (evidence.steady().isEmpty()) {
      return notSeen("steady running of the compressor");
    }
    Optional<SteadySpan> steady = last(evidence);
    if (steady.isEmpty()) {
      return notMeasured(HeaterFlowProbes.MISSING);
    }
    Estimate flow = steady.get().flowM3PerS().orElseThrow();
    StringBuilder text = new StringBuilder(80);
    text.append(Wording.flow(flow.value())).append(" through the heater");
    steady
        .get()
        .heaterShare()
        .ifPresent(
            share -> text.append(", ").append(Wording.percent(share)).append(" of the total flow"));
    text.append("; nameplate ")
        .append(
            heater.flowMinM3PerS().isPresent() ? bound(heater.flowMinM3PerS().getAsDouble()) : "0")
        .append(" to ")
        .append(
            heater.flowMaxM3PerS().isPresent()
                ? Wording.flow(heater.flowMaxM3PerS().getAsDouble())
                : "no limit");
    boolean tooLow =
        heater.flowMinM3PerS().isPresent()
            && Doubt.below(flow, heater.flowMinM3PerS().getAsDouble());
    boolean tooHigh =
        heater.flowMaxM3PerS().isPresent()
            && Doubt.above(flow, heater.flowMaxM3PerS().getAsDouble());
    long atMs = steady.get().endMs();
    return tooLow || tooHigh ? fail(atMs, text.toString()) : pass(atMs, text.toString());
  }

  private static String bound(double flowM3PerS) {
    return Wording.flow(flowM3PerS).replace(" L/min", "");
  }

  /** The last span counts: the bypass may have been set meanwhile. */
  private static Optional<SteadySpan> last(Evidence evidence) {
    return evidence.steady().stream()
        .filter(span -> span.flowM3PerS().isPresent())
        .reduce((earlier, later) -> later);
  }
}
