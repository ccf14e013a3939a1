package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.LittleAir;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An air coil that is worth a look though no limit is passed. Coils are laid out for 8 to 17 K at
 * the rated heat in humid air (common practice): one in the upper half is sound or, if it was laid
 * out for the lower, half blocked. Its approach alone does not tell which, and nothing at all where
 * ice may have made it.
 */
final class SuspectCoil {
  /** The middle of what coils are laid out for, K; see evaporator-approach. */
  private static final double MIDDLING_K = 12.5;

  private static final String LOOK =
      "look through the air coil against the light and see that the fan turns at full speed";

  private static final String TO_KNOW = ", to know how much air it gets";

  private SuspectCoil() {}

  /** What to look for at the coil, and what is still to be clipped for the air it gets. */
  static String nextCheck(Duty duty) {
    if (Starvation.shows(duty)) {
      return SiteCheck.ofStarvedCoil();
    }
    boolean drop = duty.has(DutyFigure.AIR_DROP);
    boolean humidity = duty.has(DutyFigure.HUMIDITY);
    if (drop && humidity) {
      return LOOK;
    }
    if (drop) {
      return LOOK + "; clip humidity-in beside air-in and air-out" + TO_KNOW;
    }
    return LOOK
        + (humidity
            ? "; clip air-out beside air-in and humidity-in"
            : "; clip air-out and humidity-in beside air-in")
        + TO_KNOW;
  }

  /** What makes the coil suspect, in words; empty if nothing does. */
  static Optional<String> words(Duty duty) {
    Optional<Estimate> standard = duty.of(DutyFigure.STANDARD_APPROACH);
    Optional<Estimate> approach = duty.of(DutyFigure.EVAPORATOR_APPROACH);
    if (standard.isEmpty() || approach.isEmpty() || IcedCoil.mayBe(duty)) {
      return Optional.empty();
    }
    double surelyAtLeast = standard.get().value() - standard.get().standard();
    return surelyAtLeast > MIDDLING_K
        ? Optional.of(
            "the coil evaporates "
                + Wording.kelvin(approach.get().value())
                + " below the entering air, "
                + Wording.kelvin(standard.get().value())
                + " at full load in humid air, where coils are laid out for 8 to 17 K"
                + (Starvation.shows(duty)
                    ? starved(duty)
                    : duty.of(DutyFigure.AIR_FLOW).map(SuspectCoil::air).orElse("")))
        : Optional.empty();
  }

  /**
   * A valve holds its superheat over a dirty coil: more of it is want of refrigerant, not of air.
   */
  private static String starved(Duty duty) {
    return Stream.of(Symptom.SUPERHEAT, Symptom.SUBCOOLING)
        .flatMap(
            symptom ->
                duty
                    .of(symptom == Symptom.SUPERHEAT ? DutyFigure.SUPERHEAT : DutyFigure.SUBCOOLING)
                    .stream()
                    .map(figure -> SymptomText.of(symptom, figure)))
        .collect(
            Collectors.joining(
                " and ", "; it is short of refrigerant rather than of air if this holds: ", ""));
  }

  private static String air(Estimate flow) {
    return "; it gets " + LittleAir.words(flow);
  }
}
