package heatwake.dashboard.present;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.quantity.Channel;
import java.util.Locale;

/** Short names for what a person sees often. */
public final class Names {
  private Names() {}

  /** A channel's name, short enough for a tile or a legend. */
  public static String of(Channel channel) {
    return switch (channel) {
      case WATER_IN -> "water in";
      case WATER_OUT -> "water out";
      case WATER_RETURN -> "return to pool";
      case WATER_POOL -> "pool";
      case FLOW_HEATER -> "heater flow";
      case FLOW_TOTAL -> "total flow";
      case PRESSURE_FILTER -> "filter pressure";
      case PRESSURE_DISCHARGE -> "high side";
      case PRESSURE_SUCTION -> "low side";
      case TEMP_DISCHARGE -> "discharge line";
      case TEMP_LIQUID -> "liquid line";
      case TEMP_SUCTION -> "suction line";
      case AIR_IN -> "air in";
      case AIR_OUT -> "air out";
      case AIR_AMBIENT -> "outdoor air";
      case HUMIDITY_IN -> "humidity";
      case POWER -> "power";
      case CURRENT -> "current";
      case VOLTAGE -> "voltage";
      case ENERGY -> "energy meter";
      case WIND_SPEED -> "wind";
      case PUMP_ON -> "pump";
      case FLOW_SWITCH -> "flow switch";
    };
  }

  /** A derived quantity's name. */
  public static String of(Trace.Kind kind) {
    return switch (kind) {
      case RISE -> "rise";
      case HEATER_FLOW -> "heater flow, worked out";
      case HEAT -> "heat";
      case HEATER_SHARE -> "share through the heater";
      case CONDENSING -> "condensing";
      case EVAPORATING -> "evaporating";
    };
  }

  /** A rule's name for a heading: {@code "Short cycling"}, {@code "Low COP"}. */
  public static String ofRule(String id) {
    return sentenceCase(id.replace('-', ' ').replaceAll("\\bcop\\b", "COP"));
  }

  /** A phase's name for a heading. */
  public static String of(Phase phase) {
    return sentenceCase(phase.id());
  }

  /** A severity's name for a heading. */
  public static String of(Severity severity) {
    return sentenceCase(severity.id());
  }

  /** A side's name for a heading. */
  public static String of(Side side) {
    return sentenceCase(side.id());
  }

  /** What a line of the start-up list looks for. */
  public static String of(StartupCheck.Item item) {
    return switch (item) {
      case PROBE_ZERO -> "Probe pair agrees at rest";
      case STANDING_PRESSURE -> "Standing pressure";
      case FLOW_MADE -> "Water flow made";
      case FAN_START -> "Fan starts";
      case COMPRESSOR_START -> "Compressor starts";
      case PRESSURE_RISE -> "High-side pressure rises";
      case TEMPERATURE_RISE -> "Water temperature rises";
      case HEATER_FLOW -> "Heater flow and bypass";
      case CURRENT -> "Current";
      case VOLTAGE -> "Voltage";
      case RATED_HEAT -> "Rated heat today";
      case FLOW_LOSS_STOP -> "Stops when flow is lost";
      case RESTART_DELAY -> "Restart delay kept";
      case SETPOINT_STOP -> "Stops at the set temperature";
    };
  }

  /** A heading within a sentence. */
  static String midSentence(String heading) {
    return heading.substring(0, 1).toLowerCase(Locale.ROOT) + heading.substring(1);
  }

  static String sentenceCase(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
