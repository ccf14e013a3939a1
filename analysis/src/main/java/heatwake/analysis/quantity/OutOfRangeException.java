package heatwake.analysis.quantity;

import java.math.MathContext;

/**
 * A value outside the range over which an equation holds. The message names what, the value, its
 * unit and the range: {@code water temperature 263.15 K is outside 273.15 to 623.15 K (ice below)}.
 */
public final class OutOfRangeException extends IllegalArgumentException {
  private static final long serialVersionUID = 1;
  private static final MathContext READABLE = new MathContext(6);

  /**
   * A value outside a closed range.
   *
   * @param what the quantity in words
   * @param value as given
   * @param unit of value and limits
   * @param lowest least permitted value
   * @param highest greatest permitted value
   */
  public OutOfRangeException(
      String what, double value, String unit, double lowest, double highest) {
    super(sentence(what, value, unit, lowest, highest));
  }

  /** The same, with a remark on what lies beyond the range. */
  public OutOfRangeException(
      String what, double value, String unit, double lowest, double highest, String remark) {
    super(sentence(what, value, unit, lowest, highest) + " (" + remark + ")");
  }

  /**
   * Hands the value back when it is within the closed range.
   *
   * @throws OutOfRangeException when it is not, or is NaN
   */
  public static double check(
      String what, double value, String unit, double lowest, double highest) {
    if (!(value >= lowest && value <= highest)) {
      throw new OutOfRangeException(what, value, unit, lowest, highest);
    }
    return value;
  }

  private static String sentence(
      String what, double value, String unit, double lowest, double highest) {
    return what
        + " "
        + plain(value)
        + Numeral.after(unit)
        + " is outside "
        + plain(lowest)
        + " to "
        + plain(highest)
        + Numeral.after(unit);
  }

  private static String plain(double value) {
    return Numeral.of(value, READABLE);
  }
}
