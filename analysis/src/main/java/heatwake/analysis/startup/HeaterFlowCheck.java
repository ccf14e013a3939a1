package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;
import java.util.OptionalDouble;

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
    Optional<String> missing = HeaterFlowProbes.missing(evidence);
    if (missing.isPresent()) {
      return tooLittleInAll(evidence, heater).orElseGet(() -> notMeasured(missing.get()));
    }
    if (evidence.steady().isEmpty()) {
      return notSeen("steady running of the compressor");
    }
    Optional<SteadySpan> steady = last(evidence);
    if (steady.isEmpty()) {
      return notMeasured("the flow through the heater was not read while it ran steadily");
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

  /** The heater gets no more than all the water there is, however the bypass stands. */
  private Optional<StartupCheck> tooLittleInAll(Evidence evidence, Heater heater) {
    if (evidence.steady().isEmpty() || heater.flowMinM3PerS().isEmpty()) {
      return Optional.empty();
    }
    SteadySpan last = evidence.steady().get(evidence.steady().size() - 1);
    OptionalDouble total =
        evidence.timeline().meanBetween(Channel.FLOW_TOTAL, last.startMs(), last.endMs());
    double leastM3PerS = heater.flowMinM3PerS().getAsDouble();
    if (total.isEmpty() || !isBelow(evidence, total.getAsDouble(), leastM3PerS)) {
      return Optional.empty();
    }
    return Optional.of(
        fail(
            last.endMs(),
            "all the water is "
                + Wording.flow(total.getAsDouble())
                + "; nameplate at least "
                + Wording.flow(leastM3PerS)
                + " through the heater"));
  }

  private static boolean isBelow(Evidence evidence, double totalM3PerS, double leastM3PerS) {
    double standard =
        ProbeUncertainty.of(evidence.recording().rig(), Channel.FLOW_TOTAL).at(totalM3PerS);
    return Doubt.below(new Estimate(totalM3PerS, standard), leastM3PerS);
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
