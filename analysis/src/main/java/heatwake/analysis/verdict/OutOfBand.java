package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Flooding;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Figures of the circuit that no limit was passed by and that sound heaters do not show, though the
 * heat is right. One such figure may be the heater's own way, or a thermometer with poor contact;
 * two that agree are not health, nor is one that is far out. Little superheat and little subcooling
 * are one: the liquid that stands in the coil is missing before the expansion device.
 *
 * @param figures in words; empty where all lie in their bands
 * @param isHealth whether they may still be the heater's own way
 * @param wouldDecide what settles it
 */
record OutOfBand(List<String> figures, boolean isHealth, List<String> wouldDecide) {
  /** A symptom graded beyond this is not what a sound heater shows; ours. */
  static final double QUIET = 0.25;

  /** Standard uncertainties by which a figure is beyond where it counts in full; GUM: k = 2. */
  private static final double FAR_OUT_FACTOR = 2;

  /** What a technician reads off gauges and pipes. */
  static final List<Symptom> OF_THE_CIRCUIT =
      List.of(
          Symptom.CONDENSING,
          Symptom.EVAPORATING,
          Symptom.SUPERHEAT,
          Symptom.SUBCOOLING,
          Symptom.STANDING);

  static OutOfBand of(Duty mean, Heater heater) {
    List<Symptom> outside =
        OF_THE_CIRCUIT.stream()
            .filter(symptom -> Math.abs(grade(symptom, mean, heater)) > QUIET)
            .filter(symptom -> symptom != Symptom.EVAPORATING || !IcedCoil.mayBe(mean))
            .toList();
    List<Symptom> flooded =
        outside.stream().filter(symptom -> isOfFlooding(symptom, mean, heater)).toList();
    boolean several = outside.size() - Math.max(0, flooded.size() - 1) > 1;
    Stream<String> checks =
        outside.stream()
            .flatMap(
                symptom ->
                    flooded.contains(symptom)
                        ? Stream.of(SiteCheck.OF_FLOODED_COIL)
                        : check(symptom, mean, heater).stream());
    boolean farOut =
        outside.stream().anyMatch(symptom -> isFarOut(symptom.figure(mean, heater), symptom));
    return new OutOfBand(
        outside.stream()
            .map(
                symptom ->
                    "but " + SymptomText.of(symptom, symptom.figure(mean, heater).orElseThrow()))
            .toList(),
        !several && !farOut && !SuspectCondenser.isBeyondSound(mean, heater),
        Stream.concat(
                Stream.of(
                    "a longer run, or a second gauge and thermometer, to see whether "
                        + (several ? "those figures hold" : "that figure holds")),
                checks)
            .distinct()
            .toList());
  }

  private static boolean isFarOut(Optional<Estimate> figure, Symptom symptom) {
    return figure
        .map(one -> new Estimate(one.value(), FAR_OUT_FACTOR * one.standard()))
        .filter(doubted -> Math.abs(symptom.grade(doubted)) >= 1)
        .isPresent();
  }

  /** Whether a figure is low because liquid leaves the coil. */
  private static boolean isOfFlooding(Symptom symptom, Duty mean, Heater heater) {
    return Flooding.shows(mean)
        && (symptom == Symptom.SUPERHEAT || symptom == Symptom.SUBCOOLING)
        && grade(symptom, mean, heater) < 0;
  }

  private static Optional<String> check(Symptom symptom, Duty mean, Heater heater) {
    return SiteCheck.of(symptom, grade(symptom, mean, heater) > 0, mean);
  }

  private static double grade(Symptom symptom, Duty mean, Heater heater) {
    return symptom.grade(mean, heater).orElse(0);
  }
}
