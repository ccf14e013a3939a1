package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Corroboration;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Condensing temperature too far above the leaving water: scale, or too little water. */
public final class CondenserApproach implements Rule {
  /**
   * Greatest approach at full load that no sound heater exceeds, K. Pool heaters condense 4 to 11 K
   * above the leaving water; common practice.
   */
  private static final double HARD_LIMIT_K = 14;

  /** The same where COP or power bears it out, K; common practice. */
  private static final double SOFT_LIMIT_K = 11;

  /**
   * The same where COP or power bears it out by no more than its expanded uncertainty, K: half way
   * from what sound pool heaters show to what none does; ours.
   */
  private static final double FAR_OUT_LIMIT_K = 12.5;

  /** The same where COP and power bear it out by 10 % each, K; ours. */
  private static final double TWICE_BORNE_OUT_LIMIT_K = 9;

  /**
   * Standard uncertainties for a limit that another, independent figure bears out: the two together
   * are as sure as one alone by {@link Doubt#FACTOR}.
   */
  private static final double BORNE_OUT_FACTOR = 2;

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
    return "Brought to the greatest rated heat (an approach goes with the heat passed): 14 K by more"
        + " than 3 standard uncertainties; 11 K by more than 2 where COP 5 % below or power 5 %"
        + " above the nameplate's bears it out by 2.5, 12.5 K (half way) where it does so by 2, 9 K where both do by 10 % (ours) (sound pool heaters: 4 to 11 K, common"
        + " practice); 9 K by more than 2 where subcooling above 10 K by 3 shows liquid backed up, 7 K"
        + " where it is above 14 K by 3 (ours), or above 8 K by 2 (4 to 8 K is usual: common"
        + " practice) or the standing pressure above saturation by 1 K and 3 (ours), and COP or"
        + " power bear it out, or where the approach exceeds 11 K by 1 and the subcooling is all of"
        + " more than 0.57 of what the entering water allows by the spread of sound heaters and its"
        + " own uncertainty (ours). For 10 min of steady running. Silent where superheat or subcooling show a coil short of refrigerant"
        + " (see low-charge) and it condenses at most 11 K above the leaving water as it stands.";
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
    double surelyAtLeast = approach.value() - BORNE_OUT_FACTOR * approach.standard();
    boolean starved = Starvation.shows(duty) && !Starvation.isContradictedByCondenser(duty);
    return !starved
        && (Doubt.above(approach, HARD_LIMIT_K)
            || (surelyAtLeast > SOFT_LIMIT_K && Corroboration.ofHighHead(duty))
            || (surelyAtLeast > FAR_OUT_LIMIT_K && Corroboration.ofFarOutHead(duty))
            || (surelyAtLeast > TWICE_BORNE_OUT_LIMIT_K && Corroboration.ofHighHeadTwice(duty))
            || CrowdedCondenser.shows(duty, approach));
  }

  private Flag flag(Spell spell) {
    Estimate approach = spell.mean().of(DutyFigure.CONDENSER_APPROACH).orElseThrow();
    Optional<Estimate> subcooling = spell.mean().of(DutyFigure.SUBCOOLING);
    boolean backedUp = CrowdedCondenser.pointsToRefrigerant(spell.mean());
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
    spell
        .mean()
        .of(DutyFigure.SUBCOOLING_SHARE)
        .ifPresent(
            share ->
                evidence
                    .append(" (")
                    .append(Wording.percent(share.value()))
                    .append(" of what the entering water allows)"));
    evidence.append("; sound heaters stay under 11 K at full load");
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
        // The load, to which the approach is brought, rests on the water.
        Set.of(
            Channel.PRESSURE_DISCHARGE, Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER));
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
