package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.PartLoad;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Low pressures with high superheat and low heat: refrigerant lost or held back. */
public final class LowCharge implements Rule {
  /** Subcooling above this shows liquid held back before the expansion device; ours. */
  private static final double HELD_BACK_K = 9;

  @Override
  public String id() {
    return "low-charge";
  }

  @Override
  public String summary() {
    return "Low suction and discharge pressures with high superheat and low heat: refrigerant lost"
        + " or held back.";
  }

  @Override
  public String needs() {
    return "pressure-suction, pressure-discharge, heater.refrigerant and temp-suction or"
        + " temp-liquid; with heat against [[heater.rating]], or else both temperatures";
  }

  @Override
  public String limits() {
    return "Raised when the condensing temperature is not high (at most 11 K above leaving"
        + " water) and superheat exceeds 10 K by more than 3 standard uncertainties (valves"
        + " are set to 4 to 8 K: common practice), in a suction line no more than 3 K warmer than the"
        + " entering air or before a liquid line with no more than 1 K of subcooling (a starved coil's gas gets no warmer than that air; hot gas has come in), together with heat or COP below the nameplate's,"
        + " unless subcooling above 4 K and a coil at most 13 K below the air (at the rated heat in"
        + " humid air) show it well fed;"
        + " or, where the expansion valve still holds the superheat, when subcooling is below 2 K"
        + " and the coil evaporates more than 13 K below the air (at the rated heat in humid air) though not for want of air (nor maybe so: superheat under 9 K, which a valve in control leaves, over a coil more than 17 K below air of which air-out and humidity-in do not show enough), nor with superheat under 2 K by its uncertainty (such a coil is flooded), nor, below -0.5 °C in air below 12 °C, maybe for ice, with low heat (or a low COP, but not with 95 % of the heat: ours),"
        + " unless a compressor that takes less than 95 % of the nameplate's power at no less than"
        + " its COP, or one that gave 95 % of the nameplate's heat in the same run with 8 % more power and holds 94 % of its COP"
        + " then, runs slower by choice (heater.speed not fixed); or, where superheat"
        + " is that high, subcooling under 4 K and the coil that low, when heat or COP is 5 % low,"
        + " if not beyond doubt (ours); or, with subcooling below 2 K, where superheat is that high and"
        + " heat or COP is 5 % low, or superheat exceeds 10 K by its uncertainty and heat or COP is low"
        + " beyond doubt (ours); or, where superheat is that high, subcooling below 2 K and"
        + " the coil that low, unless heat is above the nameplate's by more than 2 standard"
        + " uncertainties; or, where neither heat nor COP is known or 10 % less than the nameplate's lies within its expanded uncertainty, when superheat exceeds 12 K and subcooling is below 2 K, or below 4 K over a coil that low, or superheat exceeds 25 K, 18 K in air under 20 °C (no fixed orifice"
        + " is charged for more: common practice, from memory) and the coil evaporates low, or superheat"
        + " exceeds 12 K in air under 15 °C (charging tables ask for some 11 K there at the most: common"
        + " practice, from memory), the coil evaporates low and the suction line is colder than the"
        + " entering air by 2 standard uncertainties (a clip that hangs in the air is not: ours); or, in"
        + " any air, the same where heat or COP is 5 % low by 2 (ours). For 10 min of steady running; or where the coil ices as no sound"
        + " one does (see frosting) with superheat above 12 K (where it is not known, subcooling below 1.5 K).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.EVAPORATING))
            .filter(duty -> duty.has(DutyFigure.SUPERHEAT) || duty.has(DutyFigure.SUBCOOLING))
            .toList();
    PartLoad partLoad = PartLoad.in(evidence);
    Optional<Spell> starved =
        Spell.where(judged, duty -> new StarvedCircuit(partLoad, duty).shows())
            .or(() -> icedAndStarved(evidence));
    if (starved.isEmpty() && judged.isEmpty()) {
      return Outcome.notEnoughData("neither superheat nor subcooling known while running steadily");
    }
    return starved.map(spell -> Outcome.flagged(flag(spell))).orElseGet(Outcome::clear);
  }

  /** A starved coil that ices never runs steadily. */
  private static Optional<Spell> icedAndStarved(Evidence evidence) {
    return IcedCoil.of(evidence)
        .filter(IcedCoil::isStarved)
        .map(coil -> new Spell(coil.ends(), coil.ends().durationS()));
  }

  private Flag flag(Spell spell) {
    Duty mean = spell.mean();
    StringBuilder evidence = new StringBuilder(200);
    Set<Channel> channels = EnumSet.of(Channel.PRESSURE_SUCTION);
    mean.of(DutyFigure.SUPERHEAT)
        .ifPresent(
            superheat -> {
              evidence.append("Superheat ").append(Wording.kelvin(superheat.value())).append(", ");
              channels.add(Channel.TEMP_SUCTION);
            });
    mean.of(DutyFigure.SUBCOOLING)
        .ifPresent(
            subcooling -> {
              evidence.append(evidence.isEmpty() ? "Subcooling " : "subcooling ");
              evidence.append(Wording.kelvin(subcooling.value())).append(", ");
              channels.add(Channel.TEMP_LIQUID);
              channels.add(Channel.PRESSURE_DISCHARGE);
            });
    evidence
        .append("evaporating at ")
        .append(Wording.celsius(mean.of(DutyFigure.EVAPORATING).orElseThrow().value()));
    mean.of(DutyFigure.AIR)
        .ifPresent(air -> evidence.append(" in air of ").append(Wording.celsius(air.value())));
    mean.of(DutyFigure.CONDENSING)
        .ifPresent(
            condensing ->
                evidence.append(", condensing at ").append(Wording.celsius(condensing.value())));
    mean.of(DutyFigure.HEAT_RATIO)
        .ifPresent(
            ratio ->
                evidence
                    .append("; heat ")
                    .append(Wording.percent(ratio))
                    .append(" of the nameplate's"));
    boolean heldBack =
        mean.of(DutyFigure.SUBCOOLING).filter(known -> known.value() > HELD_BACK_K).isPresent();
    return new Flag(
        id(),
        Side.REFRIGERANT,
        Severity.WARNING,
        spell.startMs(),
        spell.endMs(),
        evidence.toString(),
        heldBack
            ? List.of(
                "filter drier or expansion valve clogged",
                "expansion valve bulb loose or uncharged",
                "too little refrigerant")
            : List.of(
                "too little refrigerant: a leak, or charged short",
                "filter drier or expansion valve clogged",
                "expansion valve bulb loose or uncharged"),
        heldBack
            ? "Feel for a temperature drop across the filter drier; a certified refrigerant handler"
                + " then tests the expansion valve."
            : "Look for oil stains at joints and valves; a certified refrigerant handler tests for"
                + " leaks and weighs the charge.",
        channels);
  }
}
