package heatwake.dashboard.chart;

import heatwake.analysis.site.Heater;
import heatwake.dashboard.present.DisplayUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A figure from the rig that readings are held against, drawn as a dashed level line.
 *
 * @param name what it is, with its value
 * @param value in the unit shown
 * @param widensAxis whether the axis is made to reach it even when the readings stay far away
 */
record Limit(String name, double value, boolean widensAxis) {
  /** The limits that the rig states for a strip. */
  static List<Limit> of(Strip strip, RunCharts charts) {
    Heater heater = charts.recording().rig().heater();
    DisplayUnit unit = strip.unit(charts.units());
    List<Limit> limits = new ArrayList<>();
    switch (strip) {
      case WATER -> add(limits, "set ", charts.recording().rig().pool().setpointK(), unit, false);
      case FLOW -> {
        add(limits, "nameplate least ", heater.flowMinM3PerS(), unit, true);
        add(limits, "nameplate greatest ", heater.flowMaxM3PerS(), unit, false);
      }
      case CURRENT -> add(limits, "nameplate ", heater.currentMaxA(), unit, false);
      case VOLTAGE -> add(limits, "nominal ", heater.voltageV(), unit, true);
      case REFRIGERANT_PRESSURE -> add(limits, "permitted ", heater.pressureMaxPa(), unit, false);
      default -> {}
    }
    return limits;
  }

  private static void add(
      List<Limit> limits, String name, OptionalDouble si, DisplayUnit unit, boolean widens) {
    si.ifPresent(
        value -> limits.add(new Limit(name + unit.text(value), unit.fromSi(value), widens)));
  }
}
