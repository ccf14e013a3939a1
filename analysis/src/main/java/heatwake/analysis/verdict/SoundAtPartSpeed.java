package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
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

  private static final double CONFIDENCE = 0.7;

  private SoundAtPartSpeed() {}

  static Soundness of(Duty mean, Evidence evidence) {
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
          List.of(Soundness.FULL_SPEED));
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
              (evidence.recording().rig().pool().setpointK().isEmpty()
                      ? "it was never seen faster, and pool.setpoint is not in the rig"
                      : "it ran so while the water was not near the set temperature too")
                  + ": a quiet or economy setting, or a compressor that moves too little"),
          List.of(FULL_POWER));
    }
    return new Soundness(CONFIDENCE, List.of(cop), List.of(Soundness.FULL_SPEED));
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
