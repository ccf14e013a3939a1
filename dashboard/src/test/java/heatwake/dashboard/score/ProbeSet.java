package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.Tap;
import java.util.EnumSet;
import java.util.Set;

/** What is clipped on, from everything to two thermometers. */
@SuppressWarnings("ImmutableEnumChecker") // Set.copyOf makes what it holds unchangeable
enum ProbeSet {
  FULL(EnumSet.complementOf(EnumSet.of(Tap.ENERGY))),
  USUAL(
      EnumSet.of(
          Tap.WATER_IN,
          Tap.WATER_OUT,
          Tap.WATER_POOL,
          Tap.FLOW_HEATER,
          Tap.POWER,
          Tap.CURRENT,
          Tap.VOLTAGE,
          Tap.PRESSURE_DISCHARGE,
          Tap.PRESSURE_SUCTION,
          Tap.TEMP_SUCTION,
          Tap.AIR_IN,
          Tap.AIR_AMBIENT,
          Tap.HUMIDITY_IN,
          Tap.FLOW_SWITCH)),
  WATER_SIDE(
      EnumSet.of(
          Tap.WATER_IN, Tap.WATER_OUT, Tap.FLOW_HEATER, Tap.POWER, Tap.AIR_IN, Tap.AIR_AMBIENT)),
  MIXING(
      EnumSet.of(
          Tap.WATER_IN,
          Tap.WATER_OUT,
          Tap.WATER_RETURN,
          Tap.FLOW_TOTAL,
          Tap.ENERGY,
          Tap.POWER,
          Tap.AIR_IN)),
  PUMP_CURVE(
      EnumSet.of(
          Tap.WATER_IN,
          Tap.WATER_OUT,
          Tap.WATER_RETURN,
          Tap.PRESSURE_FILTER,
          Tap.POWER,
          Tap.AIR_IN)),
  TWO_AND_POWER(EnumSet.of(Tap.WATER_IN, Tap.WATER_OUT, Tap.POWER)),
  TWO_THERMOMETERS(EnumSet.of(Tap.WATER_IN, Tap.WATER_OUT));

  private final Set<Tap> taps;

  ProbeSet(Set<Tap> taps) {
    this.taps = Set.copyOf(taps);
  }

  Set<Tap> taps() {
    EnumSet<Tap> copy = EnumSet.noneOf(Tap.class);
    copy.addAll(taps);
    return copy;
  }
}
