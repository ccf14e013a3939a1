package heatwake.analysis.rule.airflow;

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
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Evaporating temperature too far below the entering air: dirty coil, weak fan, ice. */
public final class EvaporatorApproach implements Rule {
  /**
   * Greatest approach at full load in humid air that no sound heater exceeds, K. Outdoor coils
   * evaporate 7 to 16 K below the entering air; common practice.
   */
  private static final double HARD_LIMIT_K = 22;

  /** The same where heat or COP bears it out, K; common practice. */
  private static final double SOFT_LIMIT_K = 16;

  /** A coil short of refrigerant evaporates low too, but its superheat is above this, K. */
  private static final double STARVED_SUPERHEAT_K = 12;

  /** And its liquid hardly subcooled, K. */
  private static final double STARVED_SUBCOOLING_K = 1.5;

  /** Air cooled by more than this part of its approach passes the coil slowly. */
  private static final double SLOW_AIR = 0.65;

  @Override
  public String id() {
    return "evaporator-approach";
  }

  @Override
  public String summary() {
    return "The evaporating temperature lies too far below the entering air: dirty coil, weak fan"
        + " or ice.";
  }

  @Override
  public String needs() {
    return "pressure-suction, heater.refrigerant and air-in; sharper with heat and power against"
        + " [[heater.rating]], and with temp-suction, air-out and humidity-in";
  }

  @Override
  public String limits() {
    return "Brought to the greatest rated heat (an approach goes with the heat passed) and to humid"
        + " air (a dry coil may lie up to 25 % further: ours), 22 K; 16 K where heat or COP below"
        + " the nameplate's bears it out (sound coils: 7 to 16 K, common practice); each by more"
        + " than 3 standard uncertainties, for 10 min of steady running. Silent where superheat"
        + " above 12 K or subcooling below 1.5 K shows a coil short of refrigerant"
        + " (see low-charge).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.EVAPORATOR_APPROACH)).toList();
    if (judged.isEmpty()) {
      return Outcome.notEnoughData(
          "evaporating temperature or entering air not known while running steadily");
    }
    Heater heater = evidence.recording().rig().heater();
    return Spell.where(judged, duty -> tooFar(duty, heater) && !isStarved(duty))
        .map(spell -> Outcome.flagged(flag(spell)))
        .orElseGet(Outcome::clear);
  }

  private static boolean tooFar(Duty duty, Heater heater) {
    Estimate approach = Symptom.EVAPORATING.figure(duty, heater).orElseThrow();
    return Doubt.above(approach, HARD_LIMIT_K)
        || (Doubt.above(approach, SOFT_LIMIT_K) && Corroboration.ofLostHeat(duty));
  }

  private static boolean isStarved(Duty duty) {
    return duty.of(DutyFigure.SUPERHEAT)
            .filter(superheat -> superheat.value() > STARVED_SUPERHEAT_K)
            .isPresent()
        || duty.of(DutyFigure.SUBCOOLING)
            .filter(subcooling -> subcooling.value() < STARVED_SUBCOOLING_K)
            .isPresent();
  }

  private Flag flag(Spell spell) {
    Duty mean = spell.mean();
    Estimate approach = mean.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow();
    Optional<Estimate> airDrop = mean.of(DutyFigure.AIR_DROP);
    boolean slowAir = airDrop.filter(d -> d.value() > SLOW_AIR * approach.value()).isPresent();
    StringBuilder evidence = new StringBuilder(160);
    evidence
        .append("Evaporating ")
        .append(Wording.kelvin(approach.value()))
        .append(" below the entering air");
    mean.of(DutyFigure.EVAPORATING)
        .ifPresent(
            evaporating ->
                evidence.append(" (at ").append(Wording.celsius(evaporating.value())).append(')'));
    mean.of(DutyFigure.LOAD)
        .ifPresent(
            load ->
                evidence
                    .append(" at ")
                    .append(Wording.percent(load.value()))
                    .append(" of full load"));
    airDrop.ifPresent(
        drop -> evidence.append(", the air cools by ").append(Wording.kelvin(drop.value())));
    evidence.append("; sound coils stay under 16 K at full load in humid air");
    return new Flag(
        id(),
        Side.AIRFLOW,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        evidence.toString(),
        slowAir
            ? List.of("coil blocked by leaves, lint or ice", "fan weak, slow or fitted wrong way")
            : List.of(
                "dirty coil fins",
                "fan weak or slow",
                "ice on the coil",
                "expansion valve or filter drier letting too little through"),
        "Look through the coil against the light and wash it if needed; see that the fan turns the"
            + " right way at full speed (power off and fan still before reaching in).",
        Set.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN));
  }
}
