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
}
