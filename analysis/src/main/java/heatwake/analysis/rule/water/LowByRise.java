package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.expected.MostHeat;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;

/** Water that rises by more than the heat could warm it at the least flow: there is less of it. */
final class LowByRise {
  static final String LIMITS =
      "Without a flow it is raised when the rise exceeds the expected heat's rise at minimum flow by"
          + " 10 % (ours) and by more than 3 standard uncertainties; where the air is not measured,"
          + " that of the heat at a wet bulb of 28 °C (hardly met above: common practice). ";

  /** A rise is explained by low flow only if it exceeds the rise at minimum flow by this; ours. */
  private static final double MATERIAL_RISE = 1.10;

  private final Rig rig;
  private final LeastFlow least;

  private LowByRise(Rig rig, LeastFlow least) {
    this.rig = rig;
    this.least = least;
  }

  /** Steady running of which both the rise and the most that the heater could give are known. */
  static List<Duty> told(Evidence evidence) {
    Rig rig = evidence.recording().rig();
    return evidence.duty().stream()
        .filter(duty -> duty.has(DutyFigure.RISE) && mostHeatW(duty, rig).isPresent())
        .toList();
  }

  static Optional<LowFlow> in(List<Duty> told, Evidence evidence, LeastFlow least) {
    LowByRise rule = new LowByRise(evidence.recording().rig(), least);
    return Spell.where(told, rule::tellsOfLowFlow).map(rule::found);
  }

  /** What the nameplate promises, or would promise in the best air where that is not measured. */
  private static Optional<Estimate> mostHeatW(Duty duty, Rig rig) {
    return duty.of(DutyFigure.EXPECTED_HEAT)
        .or(() -> duty.of(DutyFigure.WATER_IN).flatMap(water -> MostHeat.inTheBestAir(rig, water)));
  }

  private Estimate riseAtLeast(Duty duty) {
    return least.rise(mostHeatW(duty, rig).orElseThrow());
  }

  private boolean tellsOfLowFlow(Duty duty) {
    Estimate rise = duty.of(DutyFigure.RISE).orElseThrow();
    Estimate limit = riseAtLeast(duty);
    Estimate excess =
        new Estimate(
            rise.value() - MATERIAL_RISE * limit.value(),
            Math.hypot(rise.standard(), limit.standard()));
    return Doubt.above(excess, 0);
  }

  private LowFlow found(Spell spell) {
    double riseK = spell.mean().of(DutyFigure.RISE).orElseThrow().value();
    double atLeastK = riseAtLeast(spell.mean()).value();
    String heat =
        spell.mean().has(DutyFigure.EXPECTED_HEAT)
            ? " the expected heat would give only "
            : " the nameplate's heat in the best air would give only ";
    double flow = least.flowM3PerS() * atLeastK / riseK;
    return new LowFlow(
        spell.startMs(),
        spell.endMs(),
        flow,
        "The water rises by "
            + Wording.kelvin(riseK)
            + "; even at "
            + Wording.flow(least.flowM3PerS())
            + heat
            + Wording.kelvin(atLeastK)
            + ", so no more than about "
            + Wording.flow(flow)
            + " goes through the heater",
        LowFlow.RISE);
  }
}
