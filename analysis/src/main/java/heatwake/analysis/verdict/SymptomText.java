package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Locale;
import java.util.Set;

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

  /**
   * What to clip or state so that a symptom becomes known.
   *
   * @param clipped the channels that are read already
   */
  static String toKnow(Symptom symptom, Set<Channel> clipped) {
    if (symptom == Symptom.STANDING) {
      return "record half an hour of rest with pressure-discharge, air-ambient and water-in";
    }
    List<String> missing =
        channels(symptom).stream()
            .filter(channel -> !clipped.contains(channel))
            .map(Channel::id)
            .toList();
    String clip = missing.isEmpty() ? "" : "clip " + String.join(" and ", missing);
    String state = stated(symptom);
    if (clip.isEmpty() && state.isEmpty()) {
      return "find out why " + symptom.words() + " is not known: see what is missing";
    }
    return clip + (clip.isEmpty() || state.isEmpty() ? "" : ", and ") + state;
  }

  private static List<Channel> channels(Symptom symptom) {
    return switch (symptom) {
      case HEAT -> List.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER);
      case COP, POWER -> List.of(Channel.POWER);
      case UNEXPLAINED_POWER -> List.of(Channel.POWER, Channel.PRESSURE_DISCHARGE);
      case FLOW -> List.of(Channel.FLOW_HEATER);
      case CONDENSING -> List.of(Channel.PRESSURE_DISCHARGE, Channel.WATER_OUT);
      case EVAPORATING -> List.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN);
      case SUPERHEAT -> List.of(Channel.PRESSURE_SUCTION, Channel.TEMP_SUCTION);
      case SUBCOOLING -> List.of(Channel.PRESSURE_DISCHARGE, Channel.TEMP_LIQUID);
      case DISCHARGE -> List.of(Channel.PRESSURE_DISCHARGE, Channel.TEMP_DISCHARGE);
      case AIR_FLOW -> List.of(Channel.AIR_IN, Channel.AIR_OUT, Channel.HUMIDITY_IN);
      case STANDING -> List.of();
    };
  }

  private static String stated(Symptom symptom) {
    return switch (symptom) {
      case HEAT -> "state [[heater.rating]]";
      case COP, POWER, UNEXPLAINED_POWER -> "state [[heater.rating]] with power";
      case FLOW -> "state heater.flow-min";
      case CONDENSING, EVAPORATING -> "state heater.refrigerant";
      case SUPERHEAT, SUBCOOLING, DISCHARGE, AIR_FLOW, STANDING -> "";
    };
  }
}
