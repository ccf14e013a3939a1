package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Health by the circuit's figures alone, where heat cannot be held against the nameplate. */
final class SoundByCircuit {
  private static final double WITH_POWER = 0.6;

  private static final double ALONE = 0.45;

  private SoundByCircuit() {}

  static Soundness of(Duty mean, Evidence evidence) {
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
      OutOfBand outside = OutOfBand.of(mean, evidence.recording().rig().heater());
      if (!outside.figures().isEmpty()) {
        why.addAll(outside.figures());
        wouldDecide.addAll(outside.wouldDecide());
        return new Soundness(0, why, wouldDecide);
      }
      SuspectCoil.words(mean)
          .ifPresent(
              coil -> {
                why.add(coil);
                wouldDecide.add(SuspectCoil.nextCheck(mean));
              });
      SuspectCondenser.words(mean, evidence.recording().rig().heater())
          .ifPresent(
              condenser -> {
                why.add(condenser);
                wouldDecide.add(SuspectCondenser.nextCheck(mean));
              });
      return new Soundness(0, why, wouldDecide);
    }
    if (power) {
      because.add(
          "power is "
              + Wording.percent(mean.of(DutyFigure.POWER_RATIO).orElseThrow())
              + " of the nameplate's");
    }
    return new Soundness(power ? WITH_POWER : ALONE, because, wouldDecide);
  }

  private static boolean isWithin(Symptom symptom, Estimate figure) {
    return figure.value() - figure.standard() >= symptom.normalFrom()
        && figure.value() + figure.standard() <= symptom.normalTo();
  }
}
