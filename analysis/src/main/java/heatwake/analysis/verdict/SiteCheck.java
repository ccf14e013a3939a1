package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import java.util.Optional;

/**
 * What a technician can do on site to find out whether a cause is the one; common practice. Where
 * the refrigerant is touched it is work for those certified for it.
 */
final class SiteCheck {
  private static final String CHARGE =
      "a certified refrigerant handler recovers and weighs the charge";

  /** What to look for at a coil that liquid leaves, so that there is no want of it. */
  static final String OF_FLOODED_COIL =
      "the coil gets more refrigerant than it evaporates, as behind a fixed orifice in cool air; with"
          + " an expansion valve: see that its bulb sits tight on the suction pipe, under its"
          + " insulation";

  private SiteCheck() {}

  /** The check that settles a cause. */
  static String of(Cause cause) {
    return switch (cause) {
      case LOW_WATER_FLOW -> "measure the heater's flow with a bucket or a second meter";
      case SCALED_CONDENSER ->
          "open the bypass for full flow: a scaled condenser condenses as high as before, a starved"
              + " one lower";
      case UNDERCHARGE, OVERCHARGE -> CHARGE;
      case RESTRICTION ->
          "feel along the liquid line and its filter: where it turns cold it is choked";
      case NON_CONDENSABLES ->
          "let the heater rest until it is as warm as the air and compare the standing pressure with"
              + " saturation at that temperature";
      case WORN_COMPRESSOR ->
          "see how fast the two pressures level out after a stop: worn valves let them within a minute";
      case DIRTY_COIL -> "look through the air coil against the light";
      case WEAK_AIRFLOW -> "see that the fan turns the right way at full speed";
      case STRAINED_MOTOR ->
          "see what else is on the meter; have a licensed electrician measure the motor's phases";
      case MISLED_HEAT ->
          "compare both water probes in one cup, and the flow meter with a bucket or a second meter";
    };
  }

  /** What to look for where the coil or the condenser may lack refrigerant. */
  static String ofStarvedCoil() {
    return "the coil or the condenser may lack refrigerant: "
        + of(Cause.RESTRICTION)
        + "; if it does not, "
        + CHARGE;
  }

  /** What to look for where a figure lies outside its band though the heat is right. */
  static Optional<String> of(Symptom symptom, boolean above, Duty duty) {
    if (symptom == Symptom.SUBCOOLING && above) {
      return Optional.of(
          "more liquid stands in the condenser than is usual: "
              + of(Cause.RESTRICTION)
              + "; "
              + of(Cause.NON_CONDENSABLES)
              + "; if neither shows, "
              + CHARGE);
    }
    if ((symptom == Symptom.SUPERHEAT && above) || symptom == Symptom.SUBCOOLING) {
      return Optional.of(ofStarvedCoil());
    }
    if (symptom == Symptom.EVAPORATING && above) {
      return Optional.of(SuspectCoil.nextCheck(duty));
    }
    if (symptom == Symptom.CONDENSING && above) {
      return Optional.of(of(Cause.LOW_WATER_FLOW) + "; " + of(Cause.SCALED_CONDENSER));
    }
    return symptom == Symptom.STANDING ? Optional.of(of(Cause.NON_CONDENSABLES)) : Optional.empty();
  }
}
