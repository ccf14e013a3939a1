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
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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
    List<Duty> judged =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.HEAT_RATIO)).toList();
    Optional<Duty> best = longest(judged.stream().filter(duty -> !LowHeat.isLow(duty)));
    if (best.isEmpty() && !judged.isEmpty()) {
      // Low and no fault: it ran slower by choice, and what it gives at full speed is not known.
      return notSeen(
          "full speed: "
              + text(longest(judged.stream()).orElseThrow())
              + "; set the heater to full output with the pool well below its set temperature");
    }
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
    String text = text(best.get());
    if (ratio.expanded() <= CERTAIN) {
      return pass(best.get().endMs(), text);
    }
    return lacking
        .map(reason -> notMeasured(reason + "; " + text + ": too uncertain to tell"))
        .orElseGet(() -> notSeen(text + ": too uncertain to tell"));
  }

  private static Optional<Duty> longest(Stream<Duty> duties) {
    return duties.reduce((a, b) -> a.durationS() >= b.durationS() ? a : b);
  }

  private static String text(Duty duty) {
    StringBuilder text = new StringBuilder(80);
    duty.of(DutyFigure.HEAT)
        .ifPresent(heat -> text.append(Wording.kilowatts(heat.value())).append(", "));
    text.append(Wording.percent(duty.of(DutyFigure.HEAT_RATIO).orElseThrow()))
        .append(" of the nameplate's heat");
    duty.of(DutyFigure.AIR)
        .ifPresent(air -> text.append(" at ").append(Wording.celsius(air.value())).append(" air"));
    duty.of(DutyFigure.WATER_IN)
        .ifPresent(
            water -> text.append(" and ").append(Wording.celsius(water.value())).append(" water"));
    return text.toString();
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
