package heatwake.dashboard.demo;

import heatwake.dashboard.demo.plant.Tap;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;

/** A Wi-Fi box at the simulated site: a few probes whose readings go out in one JSON message. */
enum Node {
  WATER("water", EnumSet.range(Tap.WATER_IN, Tap.WATER_POOL)),
  FLOW("flow", EnumSet.of(Tap.FLOW_HEATER, Tap.FLOW_TOTAL, Tap.PRESSURE_FILTER, Tap.FLOW_SWITCH)),
  REFRIGERANT("refrigerant", EnumSet.range(Tap.PRESSURE_DISCHARGE, Tap.TEMP_SUCTION)),
  AIR("air", EnumSet.of(Tap.AIR_IN, Tap.AIR_OUT, Tap.AIR_AMBIENT, Tap.HUMIDITY_IN, Tap.WIND_SPEED)),
  METER("meter", EnumSet.of(Tap.POWER, Tap.CURRENT, Tap.VOLTAGE, Tap.ENERGY, Tap.PUMP_ON));

  private static final String SITE = "alder";

  private final String label;

  @SuppressWarnings("ImmutableEnumChecker") // Set.copyOf makes it unchangeable
  private final Set<Tap> taps;

  Node(String label, Set<Tap> taps) {
    this.label = label;
    this.taps = Set.copyOf(taps);
  }

  /** The box that a tap's probe belongs to. */
  static Node of(Tap tap) {
    return Arrays.stream(values())
        .filter(node -> node.taps.contains(tap))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no box has " + tap));
  }

  /** Topic of its messages. */
  String topic() {
    return SITE + "/" + label;
  }
}
