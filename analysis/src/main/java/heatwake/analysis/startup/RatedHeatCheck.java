package heatwake.analysis.startup;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.timeline.Timeline;
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
    Optional<Duty> best =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.HEAT_RATIO))
            .reduce((a, b) -> a.durationS() >= b.durationS() ? a : b);
    Optional<String> lacking = lacking(evidence);
    if (best.isEmpty()) {
      return lacking
          .map(this::notMeasured)
          .orElseGet(
              () ->
                  outcome instanceof Outcome.NotEnoughData data && !evidence.steady().isEmpty()
                      ? notMeasured(data.reason())
                      : notSeen("steady running of the compressor"));
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
    if (ratio.expanded() <= CERTAIN) {
      return pass(best.get().endMs(), text.toString());
    }
    return lacking
        .map(reason -> notMeasured(reason + "; " + text + ": too uncertain to tell"))
        .orElseGet(() -> notSeen(text + ": too uncertain to tell"));
  }

  /** What is not there to measure heat and to compare it with the nameplate. */
  private static Optional<String> lacking(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (evidence.recording().rig().heater().ratings().isEmpty()) {
      return Optional.of("no [[heater.rating]] in the rig to compare the heat with");
    }
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return Optional.of("no water-in and water-out pair");
    }
    if (!timeline.has(Channel.AIR_IN) && !timeline.has(Channel.AIR_AMBIENT)) {
      return Optional.of("no air-in or air-ambient reading to compare the heat with");
    }
    return HeaterFlowProbes.missing(evidence);
  }
}
