package heatwake.analysis.startup;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** The heater gives what the nameplate promises at the air and water temperature of the day. */
final class RatedHeatCheck implements Check {
  /** A ratio less certain than this (k = 2) proves nothing; ours. */
  private static final double CERTAIN = 0.2;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.RATED_HEAT;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Outcome outcome = new LowHeat().evaluate(evidence);
    if (outcome instanceof Outcome.Flagged flagged) {
      return fail(flagged.flags().get(0).endMs(), flagged.flags().get(0).evidence());
    }
    if (outcome instanceof Outcome.NotEnoughData lacking) {
      return evidence.steady().isEmpty()
          ? notSeen("steady running of the compressor")
          : notMeasured(lacking.reason());
    }
    Optional<Duty> best =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.HEAT_RATIO))
            .reduce((a, b) -> a.durationS() >= b.durationS() ? a : b);
    if (best.isEmpty()) {
      return notSeen("steady running of the compressor");
    }
    Estimate ratio = best.get().of(DutyFigure.HEAT_RATIO).orElseThrow();
    StringBuilder text = new StringBuilder(80);
    best.get()
        .of(DutyFigure.HEAT)
        .ifPresent(heat -> text.append(Wording.kilowatts(heat.value())).append(", "));
    text.append(Wording.percent(ratio)).append(" of the nameplate's heat");
    best.get()
        .of(DutyFigure.AIR)
        .ifPresent(air -> text.append(" at ").append(Wording.celsius(air.value())).append(" air"));
    best.get()
        .of(DutyFigure.WATER_IN)
        .ifPresent(
            water -> text.append(" and ").append(Wording.celsius(water.value())).append(" water"));
    return ratio.expanded() <= CERTAIN
        ? pass(best.get().endMs(), text.toString())
        : notSeen(text + ": too uncertain to tell");
  }
}
