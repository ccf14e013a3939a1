package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Health by the heat against what the nameplate promises: as likely as its uncertainty leaves for
 * the heater not being weak, less where circuit or power do not agree.
 */
final class SoundByHeat {
  private static final String OTHER_LOADS =
      "see what else runs on the heater's meter: switch the pool pump and other loads by hand and"
          + " watch power";

  private static final String CONDENSING =
      "clip pressure-discharge: a high condensing temperature (scale, overcharge) takes more power, a"
          + " strained motor takes it without";

  /** Standard uncertainties within which a ratio agrees with one. */
  private static final double AGREES = 2;

  /** Heat this far above the nameplate's is a doubtful measurement; ours. */
  private static final double TOO_GOOD = 1.2;

  private static final double BY_HEAT = 0.95;

  /** Loss of confidence per unit of relative uncertainty: 5 % costs 0.1; ours. */
  private static final double PER_UNCERTAINTY = 2;

  /** Heat speaks for health only if it is less likely low than not. */
  private static final double LIKELIER_THAN_NOT = 0.5;

  private static final double LEAST_BY_HEAT = 0.5;

  /** The most by right heat over a condenser that is worth a look; ours. */
  private static final double BESIDE_A_HIGH_HEAD = 0.6;

  private SoundByHeat() {}

  /** How sure a ratio makes by how well it is known. */
  static double byUncertainty(Estimate ratio) {
    return Math.max(
        LEAST_BY_HEAT, BY_HEAT - PER_UNCERTAINTY * Math.max(0, ratio.standard() - 0.02));
  }

  static Soundness of(Estimate ratio, Duty mean, Evidence evidence) {
    double difference = ratio.value() - 1;
    String heat = "heat is " + Wording.percent(ratio) + " of the nameplate's at these conditions";
    if (ratio.value() > TOO_GOOD && Doubt.above(ratio, 1)) {
      return new Soundness(
          0,
          List.of(heat + ": more than a heater of this nameplate can give"),
          List.of("check the flow meter against a bucket or a second meter, and the nameplate"));
    }
    if (Doubt.below(ratio, 1 - Duty.CLOSE_TO_PLATE)
        && evidence.recording().rig().heater().isFixedSpeed()) {
      return new Soundness(
          0,
          List.of(heat + ", low, though by less than is raised as a fault"),
          List.of("a run in other weather, compared with this one"));
    }
    if (Doubt.below(ratio, 1 - Duty.CLOSE_TO_PLATE)) {
      return new Soundness(
          0,
          List.of(heat + ", which part speed near the set temperature may explain"),
          List.of(
              mean.has(DutyFigure.POWER_RATIO)
                  ? Soundness.FULL_SPEED
                  : "clip power, to tell part speed from a fault"));
    }
    Optional<String> coil = SuspectCoil.words(mean);
    if (difference < -Duty.CLOSE_TO_PLATE && coil.isPresent()) {
      return new Soundness(
          0,
          List.of(heat + ", low though not beyond doubt", coil.get()),
          List.of(SuspectCoil.nextCheck(mean)));
    }
    OutOfBand outside = OutOfBand.of(mean, evidence.recording().rig().heater());
    double notLow = ratio.probabilityAbove(LowHeat.MATERIAL_RATIO);
    if (notLow < LIKELIER_THAN_NOT) {
      return new Soundness(
          0,
          Stream.concat(
                  Stream.of(
                      heat + ", low, but too uncertain to tell a weak heater from a sound one"),
                  outside.figures().stream())
              .toList(),
          Stream.concat(
                  SurerHeat.of(mean, evidence).stream(),
                  outside.figures().isEmpty() ? Stream.empty() : outside.wouldDecide().stream())
              .toList());
    }
    DrawnPower drawn = DrawnPower.of(mean);
    if (!outside.figures().isEmpty()) {
      // A figure out of its band that costs power is not the heater's own way.
      return new Soundness(
          outside.isHealth() && !drawn.isLikelierWasteful() ? LEAST_BY_HEAT : 0,
          Stream.of(Stream.of(heat), outside.figures().stream(), drawn.waste().stream())
              .flatMap(part -> part)
              .toList(),
          outside.wouldDecide());
    }
    if (drawn.isTooMuch()) {
      return new Soundness(
          0,
          List.of(
              heat,
              "but power is "
                  + Wording.percent(mean.of(DutyFigure.POWER_RATIO).orElseThrow())
                  + " of the nameplate's, more than it explains"),
          List.of(OTHER_LOADS, CONDENSING));
    }
    double confidence =
        Math.min(drawn.isLikelierWasteful() ? LEAST_BY_HEAT : notLow, byUncertainty(ratio));
    List<String> because = new ArrayList<>(List.of(heat));
    if (difference < -Math.max(Duty.CLOSE_TO_PLATE, AGREES * ratio.standard())) {
      return new Soundness(
          LEAST_BY_HEAT,
          List.of(heat + ", a little low but not beyond doubt"),
          List.of("a longer run, or better probes on water-in, water-out and flow"));
    }
    if (ratio.value() > TOO_GOOD && difference > AGREES * ratio.standard()) {
      return new Soundness(
          LEAST_BY_HEAT,
          List.of(heat + ", more than it promises but not beyond doubt"),
          SurerHeat.of(mean, evidence));
    }
    mean.of(DutyFigure.COP_RATIO)
        .ifPresent(
            cop ->
                because.add(
                    (cop.value() < 1 - Duty.CLOSE_TO_PLATE ? "but COP is " : "COP is ")
                        + Wording.percent(cop)
                        + " of the nameplate's"));
    List<String> surer =
        ratio.standard() > Duty.CLOSE_TO_PLATE ? SurerHeat.of(mean, evidence) : List.of();
    Optional<String> condenser = SuspectCondenser.words(mean, evidence.recording().rig().heater());
    if (condenser.isPresent()) {
      because.add("but " + condenser.get());
      return new Soundness(
          Math.min(BESIDE_A_HIGH_HEAD, confidence),
          because,
          Stream.concat(Stream.of(SuspectCondenser.nextCheck(mean)), surer.stream()).toList());
    }
    return new Soundness(confidence, because, surer);
  }
}
