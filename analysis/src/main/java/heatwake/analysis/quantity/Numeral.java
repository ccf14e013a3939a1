package heatwake.analysis.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as a person reads them, of any size: a broken probe may send 1e300. */
public final class Numeral {
  /** From here on a number is written with a power of ten; nothing at a pool is as large. */
  public static final double LONGEST = 1e10;

  /** Below this likewise; nothing that is not zero is as small in any unit shown. */
  private static final double SMALLEST = 1e-6;

  private Numeral() {}

  /** A number with so many digits at most. */
  public static String of(double value, MathContext digits) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(digits).stripTrailingZeros();
    double size = Math.abs(value);
    return size >= LONGEST || (size > 0 && size < SMALLEST)
        ? withPowerOfTen(rounded)
        : rounded.toPlainString();
  }

  /** A number written like {@code 1.25e300}. */
  private static String withPowerOfTen(BigDecimal value) {
    BigDecimal digits = value.stripTrailingZeros();
    int power = digits.precision() - digits.scale() - 1;
    return digits.movePointLeft(power).stripTrailingZeros().toPlainString() + "e" + power;
  }

  /** A unit's code to stand after a number, with a space before it; nothing for the unit 1. */
  public static String after(String unit) {
    return unit.equals("1") ? "" : " " + unit;
  }
}
