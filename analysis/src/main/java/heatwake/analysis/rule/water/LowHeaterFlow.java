package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Optional;

/** Too little water through the heater, measured or told by the rise. */
public final class LowHeaterFlow implements Rule {
  @Override
  public String id() {
    return "low-heater-flow";
  }

  @Override
  public String summary() {
    return "The flow through the heater is below the nameplate minimum, or the water rises by more"
        + " than the expected heat could give it at that minimum.";
  }

  @Override
  public String needs() {
    return "flow-heater (or another way to the heater's flow) and heater.flow-min; without a flow:"
        + " water-in, water-out, [[heater.rating]] and heater.flow-min; sharper with the air"
        + " temperature";
  }

  @Override
  public String limits() {
    return "heater.flow-min of the rig; where it is absent, "
        + LeastFlow.LIMITS
        + " Raised when the flow is below it by more than 3 standard uncertainties and by 3 % (ours). "
        + LowByRise.LIMITS
        + LowWithoutSteadyRunning.LIMITS
        + LowWhileRunning.LIMITS
        + FlowLockout.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<LeastFlow> least = LeastFlow.of(evidence.recording().rig().heater());
    if (least.isEmpty()) {
      return Outcome.notEnoughData("neither heater.flow-min nor a rated heat in the rig");
    }
    List<Duty> measured =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.FLOW)).toList();
    List<Duty> told = measured.isEmpty() ? LowByRise.told(evidence) : List.of();
    LowWithoutSteadyRunning notSteady = new LowWithoutSteadyRunning(evidence, least.get());
    Optional<LowFlow> running =
        !measured.isEmpty()
            ? whileSteady(evidence, measured, least.get())
            : !told.isEmpty() ? LowByRise.in(told, evidence, least.get()) : notSteady.find();
    Optional<LowFlow> found =
        running
            .or(() -> LowWhileRunning.longest(evidence).map(low -> low.found(evidence)))
            .or(() -> FlowLockout.longest(evidence).map(lockout -> lockout.found(evidence)));
    if (found.isPresent()) {
      return Outcome.flagged(found.get().flag(id(), least.get()));
    }
    return measured.isEmpty() && told.isEmpty() && !notSteady.canBeSeen()
        ? Outcome.notEnoughData("no flow through the heater known while water runs")
        : Outcome.clear();
  }

  private static Optional<LowFlow> whileSteady(
      Evidence evidence, List<Duty> measured, LeastFlow least) {
    return Spell.where(
            measured, duty -> MeasuredFlow.isLow(duty.of(DutyFigure.FLOW).orElseThrow(), least))
        .map(
            spell -> {
              double flow = spell.mean().of(DutyFigure.FLOW).orElseThrow().value();
              String rise =
                  spell
                      .mean()
                      .of(DutyFigure.RISE)
                      .map(known -> ", the water rises by " + Wording.kelvin(known.value()))
                      .orElse("");
              return new LowFlow(
                  spell.startMs(),
                  spell.endMs(),
                  flow,
                  least.sentence(flow)
                      + " for "
                      + Wording.duration(spell.lengthS())
                      + " of steady running"
                      + rise,
                  MeasuredFlow.restsOn(evidence));
            });
  }
}
