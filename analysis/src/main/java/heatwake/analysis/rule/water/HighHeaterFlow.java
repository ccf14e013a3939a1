package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
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
        + " beyond doubt is not believed: it is the balance or the meter that misleads (ours).";
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
      return Outcome.notEnoughData("no flow through the heater known while it runs steadily");
    }
    return Spell.where(
            measured,
            duty ->
                isHigh(duty.of(DutyFigure.FLOW).orElseThrow(), most.getAsDouble())
                    && !makesTooMuchHeat(duty))
        .map(spell -> Outcome.flagged(flag(spell, most.getAsDouble())))
        .orElseGet(Outcome::clear);
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
    return new Flag(
        id(),
        Side.WATER,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        "Flow "
            + Wording.flow(spell.mean().of(DutyFigure.FLOW).orElseThrow().value())
            + " is above the heater's "
            + Wording.flow(mostM3PerS)
            + " maximum for "
            + Wording.duration(spell.lengthS())
            + " of steady running"
            + rise,
        List.of("bypass shut, all water through the heater", "pump speed set too high"),
        "Open the bypass or lower the pump speed until the flow is within the nameplate.",
        Set.of(Channel.FLOW_HEATER));
  }
}
