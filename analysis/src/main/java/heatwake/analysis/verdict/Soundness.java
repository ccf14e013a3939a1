package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.rule.heat.PartLoad;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What speaks for a heater being sound. Health is not the absence of flags: it takes a figure that
 * a sick heater would not have given, so heat speaks for it by no more than the probability that
 * its uncertainty leaves for the heater not being weak.
 *
 * @param confidence how sure, 0 to 1; 0 where nothing speaks for it
 * @param because what speaks for it, the strongest first
 * @param wouldDecide what would make it surer
 */
record Soundness(double confidence, List<String> because, List<String> wouldDecide) {
  private static final String FULL_SPEED =
      "a run at full speed, with the pool well below its set temperature";

  private static final String FULL_POWER =
      "see whether a quiet or economy setting is on, and record a run at full power";

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

  private static final double AT_PART_SPEED = 0.7;
  private static final double LEAST_BY_HEAT = 0.5;
  private static final double BY_CIRCUIT_AND_POWER = 0.6;
  private static final double BY_CIRCUIT = 0.45;

  static final Soundness NONE = new Soundness(0, List.of(), List.of());

  static Soundness of(Evidence evidence) {
    if (evidence.duty().isEmpty()) {
      return new Soundness(
          0,
          List.of(
              evidence.cycles().isEmpty()
                  ? "the compressor was not seen running"
                  : "the heater was not seen running steadily"),
          List.of("record a run in which the heater heats for at least half an hour"));
    }
    Optional<String> away = StayedAway.words(evidence);
    if (away.isPresent()) {
      return new Soundness(0, List.of(away.get()), List.of(StayedAway.NEXT_CHECK));
    }
    Duty mean = Duty.meanOf(evidence.duty());
    if (PartLoad.isShown(evidence, mean)) {
      return atPartSpeed(mean, evidence);
    }
    return mean.of(DutyFigure.HEAT_RATIO)
        .map(ratio -> byHeat(ratio, mean, evidence))
        .orElseGet(() -> byCircuit(mean, evidence));
  }

  /**
   * A heater that runs slower by choice shows its health by its COP, if its circuit is sound: a
   * worn compressor or a starved coil takes less power too.
   */
  private static Soundness atPartSpeed(Duty mean, Evidence evidence) {
    Heater heater = evidence.recording().rig().heater();
    String power = Wording.percent(mean.of(DutyFigure.POWER_RATIO).orElseThrow());
    List<String> outside =
        OutOfBand.OF_THE_CIRCUIT.stream()
            .filter(symptom -> symptom.figure(mean, heater).isPresent())
            .filter(symptom -> ailsAtPartSpeed(symptom, mean, heater))
            .map(symptom -> but(symptom, mean, heater))
            .toList();
    if (!outside.isEmpty()) {
      return new Soundness(
          0,
          Stream.concat(
                  Stream.of(
                      "power is "
                          + power
                          + " of the nameplate's: part speed, or a compressor that moves too little"),
                  outside.stream())
              .toList(),
          List.of(FULL_SPEED));
    }
    String cop =
        "COP is "
            + Wording.percent(mean.of(DutyFigure.COP_RATIO).orElseThrow())
            + " of the nameplate's, at part speed (power "
            + power
            + " of it)";
    if (PartLoad.isUnasked(evidence)) {
      return new Soundness(
          0,
          List.of(
              cop,
              "it ran so while the water was not near the set temperature too: a quiet or economy"
                  + " setting, or a compressor that moves too little"),
          List.of(FULL_POWER));
    }
    return new Soundness(AT_PART_SPEED, List.of(cop), List.of(FULL_SPEED));
  }

  /** As by the circuit, a figure has to lie in its band; exchangers are at ease at part speed. */
  private static boolean ailsAtPartSpeed(Symptom symptom, Duty mean, Heater heater) {
    double value = symptom.figure(mean, heater).orElseThrow().value();
    double grade = symptom.grade(Estimate.exact(value));
    boolean approach = symptom == Symptom.CONDENSING || symptom == Symptom.EVAPORATING;
    return grade > OutOfBand.QUIET || (!approach && grade < -OutOfBand.QUIET);
  }

  private static Soundness byHeat(Estimate ratio, Duty mean, Evidence evidence) {
    double difference = ratio.value() - 1;
    String heat = "heat is " + Wording.percent(ratio) + " of the nameplate's at these conditions";
    if (ratio.value() > TOO_GOOD && Doubt.above(ratio, 1)) {
      return new Soundness(
          0,
          List.of(heat + ": more than a heater of this nameplate can give"),
          List.of("check the flow meter against a bucket or a second meter, and the nameplate"));
    }
    if (Doubt.below(ratio, 1 - Duty.CLOSE_TO_PLATE)) {
      return new Soundness(
          0,
          List.of(heat + ", which part speed near the set temperature may explain"),
          List.of(
              mean.has(DutyFigure.POWER_RATIO)
                  ? FULL_SPEED
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
    if (!outside.figures().isEmpty()) {
      return new Soundness(
          outside.isHealth() ? LEAST_BY_HEAT : 0,
          Stream.concat(Stream.of(heat), outside.figures().stream()).toList(),
          outside.wouldDecide());
    }
    DrawnPower drawn = DrawnPower.of(mean);
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
        Math.min(
            drawn.isLikelierWasteful() ? LEAST_BY_HEAT : notLow,
            Math.max(
                LEAST_BY_HEAT, BY_HEAT - PER_UNCERTAINTY * Math.max(0, ratio.standard() - 0.02)));
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
    return new Soundness(
        confidence,
        because,
        ratio.standard() > Duty.CLOSE_TO_PLATE ? SurerHeat.of(mean, evidence) : List.of());
  }

  private static boolean isWithin(Symptom symptom, Estimate figure) {
    return figure.value() - figure.standard() >= symptom.normalFrom()
        && figure.value() + figure.standard() <= symptom.normalTo();
  }

  private static String but(Symptom symptom, Duty mean, Heater heater) {
    return "but " + SymptomText.of(symptom, symptom.figure(mean, heater).orElseThrow());
  }

  private static Soundness byCircuit(Duty mean, Evidence evidence) {
    List<String> because = new ArrayList<>();
    int circuit = 0;
    boolean quiet = true;
    for (Symptom symptom : Symptom.values()) {
      Optional<Estimate> figure = symptom.figure(mean, evidence.recording().rig().heater());
      if (figure.isPresent()) {
        // To be called sound a figure has to lie in its band, not only within its doubt of it.
        quiet &= Math.abs(symptom.grade(Estimate.exact(figure.get().value()))) <= OutOfBand.QUIET;
        boolean ofCircuit = symptom == Symptom.CONDENSING || symptom == Symptom.EVAPORATING;
        if (ofCircuit) {
          // What it is called sound by must not lie at the edge of its band by assumptions.
          quiet &= isWithin(symptom, figure.get());
          circuit++;
          because.add(SymptomText.of(symptom, figure.get()));
        }
      }
    }
    boolean power = mean.has(DutyFigure.POWER_RATIO);
    List<String> wouldDecide = new ArrayList<>();
    wouldDecide.add(SurerHeat.againstThePlate(mean, evidence));
    if (!quiet || circuit < 2) {
      List<String> why = new ArrayList<>();
      why.add("no rule fired, but too little is measured to call the heater sound");
      SuspectCoil.words(mean)
          .ifPresent(
              coil -> {
                why.add(coil);
                wouldDecide.add(SuspectCoil.nextCheck(mean));
              });
      return new Soundness(0, why, wouldDecide);
    }
    if (power) {
      because.add(
          "power is "
              + Wording.percent(mean.of(DutyFigure.POWER_RATIO).orElseThrow())
              + " of the nameplate's");
    }
    return new Soundness(power ? BY_CIRCUIT_AND_POWER : BY_CIRCUIT, because, wouldDecide);
  }
}
