package heatwake.analysis.rule.airflow;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Corroboration;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.LittleAir;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.PartLoad;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Evaporating temperature too far below the entering air: dirty coil, weak fan, ice. */
public final class EvaporatorApproach implements Rule {
  /**
   * Greatest approach at the rated heat in standard air that no sound heater exceeds, K. Outdoor
   * coils are laid out for 8 to 17 K; common practice.
   */
  private static final double HARD_LIMIT_K = 24;

  /** The same where heat, COP or the air's own cooling bears it out, K; common practice. */
  private static final double SOFT_LIMIT_K = 17;

  /** An approach that goes with little air, K; ours. */
  private static final double LITTLE_AIR_LIMIT_K = 15;

  /**
   * An approach that is not small, K: the middle of what coils are laid out for. A large coil stays
   * within the usual even with half its air.
   */
  private static final double MIDDLING_APPROACH_K = 12.5;

  /** Below this share of the nameplate's power the fan may be slowed with the compressor; ours. */
  private static final double SLOW_POWER_RATIO = 0.7;

  /** Standard uncertainties for a limit that another, independent figure bears out. */
  private static final double BORNE_OUT_FACTOR = 2;

  /** More, brought to the rated heat, is a reckoning that no coil ever shows, K; ours. */
  private static final double MOST_TOLD_K = 30;

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
    return "Brought to the rated heat in air of 27 °C and 80 % by the coil's enthalpy potential: 24"
        + " K by more than 3 standard uncertainties; 17 K by more than 2 where heat or COP 5 % below"
        + " the nameplate's bears it out by 2.5 (coils are laid out for 8 to 17 K: common"
        + " practice); 15 K by more than 2 where the air's own cooling shows less than 0.055 kg/s"
        + " of air for each kW of rated heat (0.07 to 0.11 is usual: common practice; without humidity-in, if it gave up no water) by 2, by more than"
        + " 1 where it does so by 3; 12.5 K (the middle"
        + " of what coils are laid out for) by more than 2 where it does so by 3 and heat or COP bear"
        + " it out. For 10 min"
        + " of steady running. Silent where superheat above 12 K or subcooling below 1.5 K shows a"
        + " coil short of refrigerant (see low-charge; superheat under 2 K by its uncertainty shows it"
        + " flooded, not short, and under 9 K, over a coil that low, leaves open which unless the air is known), where a compressor at less than 70 % of the nameplate's power and no less"
        + " than its COP may run with a slowed fan (common practice) and the coil evaporates less than"
        + " 17 K below the air as measured (less than 12.5 K at any COP), and where the coil may be iced: below"
        + " -0.5 °C in air below 12 °C (see frosting).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream()
            .filter(
                duty ->
                    duty.has(
                        DutyFigure.STANDARD_APPROACH,
                        DutyFigure.EVAPORATOR_APPROACH,
                        DutyFigure.EVAPORATING,
                        DutyFigure.AIR))
            .toList();
    if (judged.isEmpty()) {
      return Outcome.notEnoughData(
          "evaporating temperature or entering air not known while running steadily");
    }
    PartLoad partLoad = PartLoad.in(evidence);
    return Spell.where(
            judged,
            duty ->
                tooFar(duty)
                    && !mayBeSlowed(partLoad, duty)
                    && !Starvation.shows(duty)
                    && !IcedCoil.mayBe(duty))
        .map(spell -> Outcome.flagged(flag(spell)))
        .orElseGet(Outcome::clear);
  }

  /**
   * Whether the fan may be slowed with the compressor, as speed-controlled heaters do (common
   * practice): the approach then goes less with the heat than it does with all of its air, and as
   * measured it is not large.
   */
  private static boolean mayBeSlowed(PartLoad partLoad, Duty duty) {
    double approachK = duty.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow().value();
    return partLoad.isPossible()
        && duty.of(DutyFigure.POWER_RATIO).filter(one -> one.value() < SLOW_POWER_RATIO).isPresent()
        && (approachK < MIDDLING_APPROACH_K
            || (partLoad.isByCop(duty) && approachK < SOFT_LIMIT_K));
  }

  private static boolean tooFar(Duty duty) {
    Estimate approach = duty.of(DutyFigure.STANDARD_APPROACH).orElseThrow();
    double surelyAtLeast = approach.value() - BORNE_OUT_FACTOR * approach.standard();
    double likelyAtLeast = approach.value() - approach.standard();
    return Doubt.above(approach, HARD_LIMIT_K)
        || (surelyAtLeast > SOFT_LIMIT_K && Corroboration.ofLostHeat(duty))
        || (surelyAtLeast > LITTLE_AIR_LIMIT_K && LittleAir.shows(duty))
        || (likelyAtLeast > LITTLE_AIR_LIMIT_K && LittleAir.isCertain(duty))
        || (surelyAtLeast > MIDDLING_APPROACH_K
            && LittleAir.isCertain(duty)
            && Corroboration.ofLostHeat(duty));
  }

  private Flag flag(Spell spell) {
    Duty mean = spell.mean();
    Estimate approach = mean.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow();
    Optional<Estimate> airDrop = mean.of(DutyFigure.AIR_DROP);
    Optional<Estimate> littleAir =
        mean.of(DutyFigure.AIR_FLOW).filter(flow -> flow.value() < LittleAir.LIMIT);
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
    Estimate standard = mean.of(DutyFigure.STANDARD_APPROACH).orElseThrow();
    evidence.append(
        standard.value() > MOST_TOLD_K
            ? "; sound coils stay under 17 K even at the rated heat in humid air"
            : "; that is "
                + Wording.kelvin(standard.value())
                + " at the rated heat in humid air, where sound coils stay under 17 K");
    littleAir.ifPresent(
        flow ->
            evidence
                .append(mean.has(DutyFigure.HUMIDITY) ? "; " : "; at most ")
                .append(LittleAir.words(flow)));
    return new Flag(
        id(),
        Side.AIRFLOW,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        evidence.toString(),
        littleAir.isPresent()
            ? List.of("coil blocked by leaves, lint or ice", "fan weak, slow or fitted wrong way")
            : List.of(
                "dirty coil fins",
                "fan weak or slow",
                "ice on the coil",
                "too little refrigerant, or an expansion valve letting too little through"),
        "Look through the coil against the light and wash it if needed; see that the fan turns the"
            + " right way at full speed (power off and fan still before reaching in).",
        // The load, to which the approach is brought, rests on the water.
        Set.of(
            Channel.PRESSURE_SUCTION,
            Channel.AIR_IN,
            Channel.WATER_IN,
            Channel.WATER_OUT,
            Channel.FLOW_HEATER));
  }
}
