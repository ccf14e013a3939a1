package heatwake.dashboard.present;

import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;

/**
 * A figure large enough to be read from a step away.
 *
 * @param name what it is
 * @param value the number, or a dash
 * @param unit its unit, empty if it has none
 * @param foot what to know about it: uncertainty, age, limit; may be empty
 * @param tone how it stands
 */
public record Tile(String name, String value, String unit, String foot, Tone tone) {
  static final String NONE = "–";

  /** A figure so uncertain that its numbers would tell nothing. */
  static Tile untold(String name, Unit unit) {
    return new Tile(name, NONE, Figure.symbol(unit), Telling.WORDS, Tone.STALE);
  }

  /** An estimate, with its expanded uncertainty at the foot, followed by a remark. */
  static Tile of(String name, Estimate estimate, Unit unit, String remark) {
    String[] parts = Figure.numbers(estimate, unit).split(" ± ", 2);
    String uncertainty = parts.length == 2 ? "± " + parts[1] : "";
    String foot = uncertainty.isEmpty() ? remark.replaceFirst("^, ", "") : uncertainty + remark;
    return new Tile(name, parts[0], Figure.symbol(unit), foot, Tone.PLAIN);
  }
}
