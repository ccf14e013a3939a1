package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Corroboration;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Condensing temperature too far above the leaving water: scale, or too little water. */
public final class CondenserApproach implements Rule {
  /**
   * Greatest approach at full load that no sound heater exceeds, K. Pool heaters condense 4 to 10 K
   * above the leaving water; common practice.
   */
  private static final double HARD_LIMIT_K = 14;

  /** The same where COP or power bears it out, K; common practice. */
  private static final double SOFT_LIMIT_K = 10;

  /** Liquid this much below condensing is backed up in the condenser: charge or air, K; ours. */
  private static final double BACKED_UP_K = 10;

  @Override
  public String id() {
    return "condenser-approach";
  }

  @Override
  public String summary() {
    return "The condensing temperature lies too far above the leaving water: scale, or too little"
        + " water.";
  }

  @Override
  public String needs() {
    return "pressure-discharge, heater.refrigerant and water-out; sharper with heat and power"
        + " against [[heater.rating]], and with temp-liquid";
  }

  @Override
  public String limits() {
    return "Brought to the greatest rated heat (an approach goes with the heat passed), 14 K; 10 K"
        + " where COP below or power above the nameplate's bears it out (sound pool heaters:"
        + " 4 to 10 K, common practice); each by more than 3 standard uncertainties, for 10 min of"
        + " steady running. Subcooling above 10 K points to the refrigerant instead (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.CONDENSER_APPROACH)).toList();
    if (judged.isEmpty()) {
      return Outcome.notEnoughData(
          "condensing temperature or leaving water not known while running steadily");
    }
    Heater heater = evidence.recording().rig().heater();
    return Spell.where(judged, duty -> tooFar(duty, heater))
        .map(spell -> Outcome.flagged(flag(spell)))
        .orElseGet(Outcome::clear);
  }

  private static boolean tooFar(Duty duty, Heater heater) {
    Estimate approach = Symptom.CONDENSING.figure(duty, heater).orElseThrow();
    return Doubt.above(approach, HARD_LIMIT_K)
        || (Doubt.above(approach, SOFT_LIMIT_K) && Corroboration.ofHighHead(duty));
  }

  private Flag flag(Spell spell) {
    Estimate approach = spell.mean().of(DutyFigure.CONDENSER_APPROACH).orElseThrow();
    Optional<Estimate> subcooling = spell.mean().of(DutyFigure.SUBCOOLING);
    boolean backedUp = subcooling.filter(known -> Doubt.above(known, BACKED_UP_K)).isPresent();
    StringBuilder evidence = new StringBuilder(160);
    evidence
        .append("Condensing ")
        .append(Wording.kelvin(approach.value()))
        .append(" above the leaving water");
    spell
        .mean()
        .of(DutyFigure.CONDENSING)
        .ifPresent(
            condensing ->
                evidence.append(" (at ").append(Wording.celsius(condensing.value())).append(')'));
    spell
        .mean()
        .of(DutyFigure.LOAD)
        .ifPresent(
            load ->
                evidence
                    .append(" at ")
                    .append(Wording.percent(load.value()))
                    .append(" of full load"));
    subcooling.ifPresent(
        known -> evidence.append(", subcooling ").append(Wording.kelvin(known.value())));
    evidence.append("; sound heaters stay under 10 K at full load");
    return new Flag(
        id(),
        backedUp ? Side.REFRIGERANT : Side.WATER,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        evidence.toString(),
        causes(backedUp),
        backedUp
            ? "Let the heater rest and compare the standing pressure with saturation at air"
                + " temperature; a certified refrigerant handler can then weigh the charge."
            : "Raise the flow through the heater; if the approach stays, look into the condenser's"
                + " water side for scale.",
        Set.of(Channel.PRESSURE_DISCHARGE, Channel.WATER_OUT));
  }

  private static List<String> causes(boolean backedUp) {
    List<String> causes = new ArrayList<>();
    if (backedUp) {
      causes.add("too much refrigerant");
      causes.add("air or other non-condensable gas in the circuit");
    }
    causes.add("scale or dirt on the water side of the condenser");
    causes.add("too little water through the heater");
    if (!backedUp) {
      causes.add("too much refrigerant, or air in the circuit");
    }
    return causes;
  }
}
