package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowCop;
import heatwake.analysis.rule.heat.PartLoad;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.stream.Stream;

/**
 * A heater that runs slower by choice shows its health by its COP, if its circuit is sound: a worn
 * compressor or a starved coil takes less power too.
 */
final class SoundAtPartSpeed {
  private static final String FULL_POWER =
      "see whether a quiet or economy setting is on, and record a run at full power";

  private static final String STATE_SPEED =
      "see whether an inverter drives the compressor; if none does, state speed = \"fixed\" under"
          + " [heater] in the rig: less heat is then no choice";

  private static final double CONFIDENCE = 0.7;

  /** The most by a COP that is likelier low than not, though not far. */
  private static final double MAYBE_LOW = 0.5;

  private static final double LIKELIER_THAN_NOT = 0.5;

  /** The most by gauges alone beside a COP that says nothing: see health by the circuit; ours. */
  private static final double BY_GAUGES = 0.45;

  /**
   * What fails costs a quarter of the COP and more; ours. A COP whose expanded uncertainty (GUM, k
   * = 2) holds as little is one that a sick heater would have given too.
   */
  private static final double FAR_LESS = 0.75;

  private static final String NOT_KNOWN =
      ", so badly known that the COP of an ailing heater is as possible";

  /** The gauges that between them see a want of water, of air and of refrigerant. */
  private static final List<Symptom> GAUGES =
      List.of(Symptom.CONDENSING, Symptom.EVAPORATING, Symptom.SUPERHEAT);

  private SoundAtPartSpeed() {}

  static Soundness of(Duty mean, PartLoad partLoad, Evidence evidence) {
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
          surer(heater, Soundness.FULL_SPEED));
    }
    String cop =
        "COP is "
            + Wording.percent(mean.of(DutyFigure.COP_RATIO).orElseThrow())
            + " of the nameplate's, at part speed (power "
            + power
            + " of it)";
    if (partLoad.isUnasked()) {
      return new Soundness(
          0,
          List.of(
              cop,
              (evidence.recording().rig().pool().setpointK().isEmpty()
                      ? "it was never seen faster, and pool.setpoint is not in the rig"
                      : "it ran so while the water was not near the set temperature too")
                  + ": a quiet or economy setting, or a compressor that moves too little"),
          surer(heater, FULL_POWER));
    }
    return byWidth(mean, evidence, cop);
  }

  private static List<String> surer(Heater heater, String run) {
    return heater.speed().isPresent() ? List.of(run) : List.of(run, STATE_SPEED);
  }

  /** As sure as the COP is known: what leaves room for a sick heater's speaks for none. */
  private static Soundness byWidth(Duty mean, Evidence evidence, String cop) {
    Estimate ratio = mean.of(DutyFigure.COP_RATIO).orElseThrow();
    List<String> surer =
        Stream.concat(
                ratio.standard() > Duty.CLOSE_TO_PLATE
                    ? SurerHeat.of(mean, evidence).stream()
                    : Stream.<String>empty(),
                Stream.of(Soundness.FULL_SPEED))
            .toList();
    if (ratio.value() - ratio.expanded() >= FAR_LESS) {
      boolean isLikelierLow = ratio.probabilityAbove(LowCop.MATERIAL_RATIO) < LIKELIER_THAN_NOT;
      return new Soundness(
          Math.min(isLikelierLow ? MAYBE_LOW : CONFIDENCE, SoundByHeat.byUncertainty(ratio)),
          List.of(cop),
          surer);
    }
    Heater heater = evidence.recording().rig().heater();
    boolean likelyHolds = ratio.value() >= 1 - Duty.CLOSE_TO_PLATE;
    return likelyHolds && GAUGES.stream().allMatch(gauge -> isAtEase(gauge, mean, heater))
        ? new Soundness(
            BY_GAUGES,
            Stream.concat(
                    Stream.of(cop + NOT_KNOWN),
                    GAUGES.stream()
                        .map(
                            gauge ->
                                SymptomText.of(gauge, gauge.figure(mean, heater).orElseThrow())))
                .toList(),
            surer)
        : new Soundness(0, List.of(cop + NOT_KNOWN), surer);
  }

  /** Known, and by its uncertainty not above its band. */
  private static boolean isAtEase(Symptom gauge, Duty mean, Heater heater) {
    return gauge
        .figure(mean, heater)
        .filter(figure -> figure.value() + figure.standard() <= gauge.normalTo())
        .isPresent();
  }

  /** As by the circuit, a figure has to lie in its band; exchangers are at ease at part speed. */
  private static boolean ailsAtPartSpeed(Symptom symptom, Duty mean, Heater heater) {
    double value = symptom.figure(mean, heater).orElseThrow().value();
    double grade = symptom.grade(Estimate.exact(value));
    boolean approach = symptom == Symptom.CONDENSING || symptom == Symptom.EVAPORATING;
    return grade > OutOfBand.QUIET || (!approach && grade < -OutOfBand.QUIET);
  }

  private static String but(Symptom symptom, Duty mean, Heater heater) {
    return "but " + SymptomText.of(symptom, symptom.figure(mean, heater).orElseThrow());
  }
}
