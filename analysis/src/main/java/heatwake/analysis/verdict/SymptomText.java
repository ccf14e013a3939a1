package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Locale;

/** Says a symptom with its band. */
final class SymptomText {
  private SymptomText() {}

  static String of(Symptom symptom, Estimate figure) {
    String said = symptom.words() + " " + value(symptom, figure.value());
    if (symptom == Symptom.STANDING || symptom == Symptom.UNEXPLAINED_POWER) {
      return said + " (sound: no more than " + value(symptom, symptom.normalTo()) + ")";
    }
    return said
        + " (sound: "
        + value(symptom, symptom.normalFrom())
        + " to "
        + value(symptom, symptom.normalTo())
        + ")";
  }

  private static String value(Symptom symptom, double value) {
    return switch (symptom) {
      case HEAT, COP, POWER, UNEXPLAINED_POWER, FLOW -> Wording.percent(value);
      case AIR_FLOW -> String.format(Locale.ROOT, "%.3f kg/s", value);
      case CONDENSING, EVAPORATING, SUPERHEAT, SUBCOOLING, DISCHARGE, STANDING ->
          Wording.kelvin(value);
    };
  }

  /** What to clip or state so that a symptom becomes known. */
  static String toKnow(Symptom symptom) {
    return switch (symptom) {
      case HEAT -> "clip water-in, water-out and a flow, and state [[heater.rating]]";
      case COP, POWER -> "clip power and state [[heater.rating]] with power";
      case UNEXPLAINED_POWER ->
          "clip power and pressure-discharge, and state [[heater.rating]] with power";
      case FLOW -> "clip flow-heater and state heater.flow-min";
      case CONDENSING -> "clip pressure-discharge and water-out, and state heater.refrigerant";
      case EVAPORATING -> "clip pressure-suction and air-in, and state heater.refrigerant";
      case SUPERHEAT -> "clip pressure-suction and temp-suction";
      case SUBCOOLING -> "clip pressure-discharge and temp-liquid";
      case DISCHARGE -> "clip pressure-discharge and temp-discharge";
      case AIR_FLOW -> "clip air-out beside air-in, and humidity-in";
      case STANDING ->
          "record half an hour of rest with pressure-discharge, air-ambient and water-in";
    };
  }
}
