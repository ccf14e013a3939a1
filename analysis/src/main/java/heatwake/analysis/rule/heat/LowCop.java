package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.RunningStretch;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Locale;

/** COP below the nameplate's at these conditions by more than the uncertainty allows. */
public final class LowCop implements Rule {
  /** A new heater may do this much worse than its plate says; rating tolerance, common practice. */
  private static final double TOLERATED_RATIO = 0.95;

  /** A shortfall smaller than this is not worth a call-out; ours. */
  public static final double MATERIAL_RATIO = 0.88;

  @Override
  public String id() {
    return "low-cop";
  }

  @Override
  public String summary() {
    return "The COP is below the nameplate's at these conditions by more than the uncertainty"
        + " allows.";
  }

  @Override
  public String needs() {
    return "water-in, water-out, a flow, power, the air temperature and [[heater.rating]] with"
        + " power";
  }

  @Override
  public String limits() {
    return "Raised when the COP is below 95 % of the expected COP (plates are tolerated to be 5 % off:"
        + " common practice) by more than 3 standard uncertainties, and below 88 % (ours), for 10 min of steady running (between defrosts as for low-heat);"
        + " by 2 where the power, less 3 % for each kelvin of head on the condenser (common practice), is above 108 % of the"
        + " nameplate's by 3 (ours), or the compressor's work is badly spent beyond doubt (see"
        + " low-heat), and the heater was seen at rest, so that another load on its meter would have"
        + " shown.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.COP_RATIO)).toList();
    if (judged.isEmpty()) {
      return Outcome.notEnoughData(
          evidence.recording().rig().heater().ratings().stream()
                  .noneMatch(rating -> rating.powerW().isPresent())
              ? "no [[heater.rating]] with power in the rig to compare the COP with"
              : evidence.heat().flowIsAssumed()
                  ? "the flow through the heater is not measured, so the COP tells nothing beyond"
                      + " doubt"
                  : "heat, power or air temperature not known while running steadily");
    }
    CompressorWork work = CompressorWork.in(evidence);
    boolean alone = evidence.load().shownBy().contains(Channel.POWER);
    return Spell.where(
            CleanCoil.among(judged, RunningStretch.of(evidence.phases())),
            duty ->
                isLow(duty.of(DutyFigure.COP_RATIO).orElseThrow())
                    || (isLikelyLow(duty)
                        && ((alone && drawsTooMuch(duty)) || work.isWasted(duty))))
        .map(spell -> Outcome.flagged(flag(spell, work, evidence)))
        .orElseGet(Outcome::clear);
  }

  /** Below the nameplate's beyond doubt, and by enough to matter. */
  private static boolean isLow(Estimate ratio) {
    return Doubt.below(ratio, TOLERATED_RATIO) && ratio.value() < MATERIAL_RATIO;
  }

  /** Low by its expanded uncertainty: enough only where another figure bears it out. */
  private static boolean isLikelyLow(Duty duty) {
    Estimate ratio = duty.of(DutyFigure.COP_RATIO).orElseThrow();
    return ratio.value() + ratio.expanded() < TOLERATED_RATIO && ratio.value() < MATERIAL_RATIO;
  }

  /**
   * Whether the power is beyond doubt more than the nameplate's and what the head on the condenser
   * explains: a heat that is badly known would have to err just as far as the power is off.
   */
  private static boolean drawsTooMuch(Duty duty) {
    return duty.of(DutyFigure.UNEXPLAINED_POWER_RATIO)
        .filter(power -> Doubt.above(power, Symptom.UNEXPLAINED_POWER.normalTo()))
        .isPresent();
  }

  private Flag flag(Spell spell, CompressorWork work, Evidence evidence) {
    Duty mean = spell.mean();
    Estimate ratio = mean.of(DutyFigure.COP_RATIO).orElseThrow();
    StringBuilder text = new StringBuilder(120);
    text.append("COP ");
    if (mean.has(DutyFigure.HEAT, DutyFigure.POWER)) {
      double cop =
          mean.of(DutyFigure.HEAT).orElseThrow().value()
              / mean.of(DutyFigure.POWER).orElseThrow().value();
      text.append(String.format(Locale.ROOT, "%.1f", cop));
      // No heat at all is no share of anything that the promise could be worked out from.
      text.append(
          ratio.value() != 0
              ? String.format(
                  Locale.ROOT, " where the nameplate promises %.1f, ", cop / ratio.value())
              : ", ");
    }
    text.append(Wording.percent(ratio))
        .append(" of it, over ")
        .append(Wording.duration(spell.lengthS()))
        .append(" of steady running");
    mean.of(DutyFigure.POWER_RATIO)
        .ifPresent(
            power ->
                text.append("; power ")
                    .append(Wording.percent(power))
                    .append(" of the nameplate's"));
    work.wasteInWords(mean).ifPresent(text::append);
    return new Flag(
        id(),
        Side.UNDECIDED,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        text.toString(),
        List.of(
            "scaled condenser or too little water",
            "wrong charge or a worn compressor",
            "dirty air coil or weak fan",
            "a power meter that also sees other loads"),
        "Compare pressures, flow and air temperatures with the verdict; see that the power meter"
            + " sees the heater alone.",
        HeatChannels.of(evidence, Channel.POWER));
  }
}
