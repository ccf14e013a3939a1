package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** More water through the heater than its nameplate allows. */
public final class HighHeaterFlow implements Rule {
  /** An excess smaller than this part of the maximum is not worth a call-out; ours. */
  private static final double MATERIAL_FLOW = 1.03;

  /**
   * A flow with which the heat were more than this share of the nameplate's, beyond doubt, is none:
   * no heater gives half as much again as its plate; ours.
   */
  private static final double MOST_HEAT = 1.5;

  /** A meter that reads more without a heat to hold it against may have a wrong scale; ours. */
  private static final double UNCHECKED = 2;

  @Override
  public String id() {
    return "high-heater-flow";
  }

  @Override
  public String summary() {
    return "The flow through the heater is above the nameplate maximum.";
  }

  @Override
  public String needs() {
    return "flow-heater (or another way to the heater's flow) and heater.flow-max";
  }

  @Override
  public String limits() {
    return "heater.flow-max of the rig. Raised when the flow is above it by more than 3 standard"
        + " uncertainties and by 3 % (ours). A flow that makes more than 1.5 times the nameplate's heat"
        + " beyond doubt is not believed: it is the balance or the meter that misleads (ours). Where no"
        + " run becomes steady, the heater's own meter has to read so, and less than twice the maximum,"
        + " on the mean of 5 min and more with the compressor on (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    OptionalDouble most = evidence.recording().rig().heater().flowMaxM3PerS();
    if (most.isEmpty()) {
      return Outcome.notEnoughData("no heater.flow-max in the rig");
    }
    List<Duty> measured =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.FLOW)).toList();
    if (measured.isEmpty()) {
      return withoutSteadyRunning(evidence, most.getAsDouble());
    }
    return Spell.where(
            measured,
            duty ->
                isHigh(duty.of(DutyFigure.FLOW).orElseThrow(), most.getAsDouble())
                    && !makesTooMuchHeat(duty))
        .map(spell -> Outcome.flagged(flag(spell, most.getAsDouble())))
        .orElseGet(Outcome::clear);
  }

  /** By the heater's own meter over all running, where no run ever becomes steady. */
  private Outcome withoutSteadyRunning(Evidence evidence, double mostM3PerS) {
    OptionalDouble mean =
        evidence.timeline().has(Channel.FLOW_HEATER)
            ? WaterRunning.flowWhileCompressing(evidence)
            : OptionalDouble.empty();
    if (mean.isEmpty()) {
      return Outcome.notEnoughData("no flow through the heater known while it runs steadily");
    }
    double flowM3PerS = mean.getAsDouble();
    Estimate flow = new Estimate(flowM3PerS, WaterRunning.uncertainty(evidence, flowM3PerS));
    return isHigh(flow, mostM3PerS) && flowM3PerS < UNCHECKED * mostM3PerS
        ? Outcome.flagged(
            flag(
                evidence.recording().startMs(),
                evidence.recording().endMs(),
                sentence(flowM3PerS, mostM3PerS)
                    + " while the compressor runs; the heater never came to steady running"))
        : Outcome.clear();
  }

  /** Above the maximum beyond doubt, and by enough to matter. */
  private static boolean isHigh(Estimate flow, double mostM3PerS) {
    return Doubt.above(flow, mostM3PerS) && flow.value() > MATERIAL_FLOW * mostM3PerS;
  }

  private static boolean makesTooMuchHeat(Duty duty) {
    return duty.of(DutyFigure.HEAT_RATIO)
        .filter(ratio -> Doubt.above(ratio, MOST_HEAT))
        .isPresent();
  }

  private Flag flag(Spell spell, double mostM3PerS) {
    String rise =
        spell
            .mean()
            .of(DutyFigure.RISE)
            .map(known -> ", the water rises by only " + Wording.kelvin(known.value()))
            .orElse("");
    return flag(
        spell.startMs(),
        spell.endMs(),
        sentence(spell.mean().of(DutyFigure.FLOW).orElseThrow().value(), mostM3PerS)
            + " for "
            + Wording.duration(spell.lengthS())
            + " of steady running"
            + rise);
  }

  private static String sentence(double flowM3PerS, double mostM3PerS) {
    return "Flow "
        + Wording.flow(flowM3PerS)
        + " is above the heater's "
        + Wording.flow(mostM3PerS)
        + " maximum";
  }

  private Flag flag(long startMs, long endMs, String text) {
    return new Flag(
        id(),
        Side.WATER,
        Severity.WARNING,
        startMs,
        endMs,
        text,
        List.of("bypass shut, all water through the heater", "pump speed set too high"),
        "Open the bypass or lower the pump speed until the flow is within the nameplate.",
        Set.of(Channel.FLOW_HEATER));
  }
}
