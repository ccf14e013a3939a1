package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HotSuction;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.RunningStretch;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;

/** Heat below the nameplate's at these conditions by more than the uncertainty allows. */
public final class LowHeat implements Rule {
  /**
   * A new heater may give this much less than its plate says; rating tolerance, common practice.
   */
  private static final double TOLERATED_RATIO = 0.95;

  /** A shortfall smaller than this is not worth a call-out; ours. */
  public static final double MATERIAL_RATIO = 0.9;

  /** Above this share of the expected heat the flag is a warning, below it an alarm; ours. */
  private static final double GRAVE_RATIO = 0.5;

  @Override
  public String id() {
    return "low-heat";
  }

  @Override
  public String summary() {
    return "The heat is below the nameplate's at these conditions by more than the uncertainty"
        + " allows.";
  }

  @Override
  public String needs() {
    return "water-in, water-out, a flow, the air temperature and [[heater.rating]]; power, to tell"
        + " a heater that idles at part speed from one that fails";
  }

  @Override
  public String limits() {
    return "Raised when heat is below 95 % of the expected heat (plates are tolerated to be 5 % off:"
        + " common practice) by more than 3 standard uncertainties, and below 90 % (ours), for 10"
        + " min of steady running. In air below 12 °C a stretch that ends in a defrost or comes after one"
        + " is judged by the first steady running of it, begun in its first half: ice takes 10 to"
        + " 25 % before a sound defrost (common practice). Not raised where the compressor, unless heater.speed is fixed, runs at part speed: its power is"
        + " down alike and one of these holds; the COP is 94 % of that at full speed in the same run or,"
        + " within 1.5 K of the set temperature, of the expected one (ours); or it is no less than the"
        + " expected one; or it may be so by an assumed flow at 75 % of the power or less (ours); or,"
        + " between 75 and 95 % of the power, it is 94 % of the expected one over a coil less than 17 K"
        + " below the air and not short of refrigerant (at the rated heat in humid air; so near full"
        + " speed the COP gains little, and what fails takes more of the heat than of the power: ours);"
        + " or, at less power, the same with a COP that may be the expected one by its expanded"
        + " uncertainty, where heat over power, less what the fan was seen to draw ahead of a start, is"
        + " above 48 % of Carnot's COP between evaporating and condensing temperature (a sound"
        + " compressor does 50 to 60 %, one that leaks back about 40 %: common practice); or, with more"
        + " power at full speed than nameplate and head explain (another load on the meter) and near"
        + " the set temperature, heat falls from there by no more than the expected COP for the power."
        + " Raised all the same where superheat is above 12 K beyond doubt (a valve holds it at any"
        + " speed: common practice); or where the work is badly spent beyond doubt in a run that never"
        + " has 90 % of the heat (a slow compressor spends it no worse): heat over power, less the"
        + " fan's (10 % of the nameplate's power, more where it was seen, 25 % of what is drawn at the"
        + " most: ours), below 42 % of Carnot's COP between evaporating and condensing temperature and"
        + " 3 K for pipes and valves (common practice; one that puts 45 % of its power into the gas"
        + " does 44 %, where 65 to 75 % is usual: common practice), by 3 standard uncertainties, at 10 K"
        + " of lift and more, the heater seen at rest, so that another load on its meter would have"
        + " shown.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.HEAT_RATIO)).toList();
    if (judged.isEmpty()) {
      return Outcome.notEnoughData(reason(evidence));
    }
    CompressorWork work = CompressorWork.in(evidence);
    PartLoad partLoad = new PartLoad(evidence, work);
    return Spell.where(
            CleanCoil.among(judged, RunningStretch.of(evidence.phases())),
            duty -> isLow(duty) && !partLoad.explains(duty))
        .map(spell -> Outcome.flagged(flag(spell, work, evidence)))
        .orElseGet(Outcome::clear);
  }

  /** Whether heat is below the nameplate's beyond doubt, and by enough to matter. */
  public static boolean isLow(Duty duty) {
    Estimate ratio = duty.of(DutyFigure.HEAT_RATIO).orElseThrow();
    return Doubt.below(ratio, TOLERATED_RATIO) && ratio.value() < MATERIAL_RATIO;
  }

  private static String reason(Evidence evidence) {
    if (evidence.recording().rig().heater().ratings().isEmpty()) {
      return "no [[heater.rating]] in the rig to compare the heat with";
    }
    if (evidence.steady().isEmpty()) {
      return "the heater was not seen running steadily";
    }
    return evidence.heat().flowIsAssumed()
        ? "the flow through the heater is not measured, so the heat tells nothing beyond doubt"
        : "heat or air temperature not known while running";
  }

  private Flag flag(Spell spell, CompressorWork work, Evidence run) {
    Estimate ratio = spell.mean().of(DutyFigure.HEAT_RATIO).orElseThrow();
    StringBuilder evidence = new StringBuilder(120);
    Optional<Estimate> heat = spell.mean().of(DutyFigure.HEAT);
    Optional<Estimate> expected = spell.mean().of(DutyFigure.EXPECTED_HEAT);
    if (heat.isPresent() && expected.isPresent()) {
      evidence
          .append("Heat ")
          .append(Wording.kilowatts(heat.get().value()))
          .append(" where the nameplate promises ")
          .append(Wording.kilowatts(expected.get().value()))
          .append(", ");
    } else {
      evidence.append("Heat ");
    }
    evidence
        .append(Wording.percent(ratio))
        .append(" of it, over ")
        .append(Wording.duration(spell.lengthS()))
        .append(" of steady running");
    if (HotSuction.shows(spell.mean())) {
      evidence
          .append("; the suction line is ")
          .append(Wording.kelvin(spell.mean().of(DutyFigure.SUCTION_EXCESS).orElseThrow().value()))
          .append(
              " warmer than the entering air: hot gas comes in past the reversing valve or back"
                  + " through the compressor");
    }
    work.wasteInWords(spell.mean()).ifPresent(evidence::append);
    return new Flag(
        id(),
        Side.UNDECIDED,
        ratio.value() < GRAVE_RATIO ? Severity.ALARM : Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        evidence.toString(),
        List.of(
            "too little water or a scaled condenser",
            "lost refrigerant or a worn compressor",
            "dirty air coil, weak fan or air going round",
            "a flow meter or pipe probe that misleads"),
        "Compare flow, pressures and air temperatures with the manual's; clip on what is missing.",
        HeatChannels.of(run));
  }
}
