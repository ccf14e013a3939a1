package heatwake.dashboard.present;

import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;

/**
 * A unit as a person reads it.
 *
 * @param unit the unit
 * @param decimals digits after the point that a single reading is shown with
 */
public record DisplayUnit(Unit unit, int decimals) {
  /** How it is written on screen and paper; empty for a state. */
  public String symbol() {
    return Figure.symbol(unit);
  }

  /** An SI value in this unit. */
  public double fromSi(double si) {
    return unit.fromSi(si);
  }

  /** The number alone: {@code "26.4"}. */
  public String number(double si) {
    return Figure.fixed(fromSi(si), decimals);
  }

  /** Number and unit: {@code "26.4 °C"}. */
  public String text(double si) {
    return Figure.of(si, unit, decimals);
  }

  /** Value and expanded uncertainty with unit: {@code "15.3 ± 0.7 kW"}. */
  public String text(Estimate si) {
    return Figure.of(si, unit);
  }
}
