package heatwake.dashboard.present;

import heatwake.analysis.quantity.Numeral;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Writes figures as people read them: {@code 15.3 ± 0.7 kW}. The uncertainty is expanded (k = 2)
 * and rounded to one significant digit, two where the first is a 1 (GUM, JCGM 100:2008, 7.2.6: at
 * most two); the value is rounded to the same place.
 */
public final class Figure {
  private static final int MOST_DECIMALS = 3;

  /** The last place that is shown. */
  private static final double LEAST = 0.001;

  private static final int DIGITS_WITHOUT_UNCERTAINTY = 3;

  /** Of what no probe means, as many digits as tell what was sent. */
  private static final MathContext SHORT = new MathContext(DIGITS_WITHOUT_UNCERTAINTY);

  private Figure() {}

  /** An SI estimate with its expanded uncertainty in a unit. */
  public static String of(Estimate estimate, Unit unit) {
    return numbers(estimate, unit) + suffix(unit);
  }

  /** As {@link #of(Estimate, Unit)}, without the unit's symbol. */
  public static String numbers(Estimate estimate, Unit unit) {
    double value = unit.fromSi(estimate.value());
    double uncertainty = Math.abs(estimate.expanded() / unit.factor());
    if (!(uncertainty > 0) || Double.isInfinite(uncertainty)) {
      return plain(value);
    }
    int decimals = Math.max(0, Math.min(MOST_DECIMALS, decimalsFor(uncertainty)));
    boolean tooSmallToShow = Math.abs(value) < LEAST / 2 && uncertainty < LEAST / 2;
    return tooSmallToShow
        ? "under " + fixed(LEAST, MOST_DECIMALS)
        : fixed(value, decimals) + " ± " + fixed(uncertainty, decimals);
  }

  /** The expanded uncertainty of an SI estimate alone: {@code ± 0.7 kW}. */
  public static String uncertainty(Estimate estimate, Unit unit) {
    String whole = of(estimate, unit);
    return whole.substring(Math.max(0, whole.indexOf('±')));
  }

  /** An SI value without uncertainty, to three significant digits. */
  public static String of(double si, Unit unit) {
    return plain(unit.fromSi(si)) + suffix(unit);
  }

  /** A figure that somebody stated, with as many digits as that took: {@code 0.1 K}. */
  public static String stated(double si, Unit unit) {
    String number = plain(unit.fromSi(si));
    return (number.contains(".") ? number.replaceAll("\\.?0+$", "") : number) + suffix(unit);
  }

  /** An SI value with a fixed number of decimals. */
  public static String of(double si, Unit unit, int decimals) {
    return fixed(unit.fromSi(si), decimals) + suffix(unit);
  }

  /** How a unit is written for people: {@code °C} for {@code Cel}, {@code kWh} for {@code kW.h}. */
  public static String symbol(Unit unit) {
    return switch (unit.code()) {
      case "Cel" -> "°C";
      case "[degF]" -> "°F";
      case "kW.h" -> "kWh";
      case "W.h" -> "Wh";
      case "[gal_us]/min" -> "gal/min";
      case "[gal_us]" -> "gal";
      case "[sft_i]" -> "ft²";
      case "[ft_i]" -> "ft";
      case "[mi_i]/h" -> "mph";
      case "[ppm]" -> "ppm";
      case "[psi]" -> "psi";
      case "[Btu_IT]/h" -> "Btu/h";
      case "m3" -> "m³";
      case "m2" -> "m²";
      case "m3/h" -> "m³/h";
      case "m3/s" -> "m³/s";
      case "Ohm" -> "Ω";
      case "1" -> "";
      default -> unit.code();
    };
  }

  private static String suffix(Unit unit) {
    String symbol = symbol(unit);
    return symbol.isEmpty() ? "" : " " + symbol;
  }

  private static int decimalsFor(double uncertainty) {
    BigDecimal figure = new BigDecimal(uncertainty);
    int exponent = figure.precision() - figure.scale() - 1;
    int firstDigit = figure.movePointLeft(exponent).intValue();
    return firstDigit == 1 ? 1 - exponent : -exponent;
  }

  private static String plain(double value) {
    if (value == 0 || !Double.isFinite(value)) {
      return fixed(value, 0);
    }
    int exponent = (int) Math.floor(Math.log10(Math.abs(value)));
    return fixed(
        value, Math.max(0, Math.min(MOST_DECIMALS, DIGITS_WITHOUT_UNCERTAINTY - 1 - exponent)));
  }

  /** A number with so many decimals; never "-0". */
  public static String fixed(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    if (Math.abs(value) >= Numeral.LONGEST) {
      return Numeral.of(value, SHORT).replace('-', '−');
    }
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    String text = rounded.toPlainString();
    return rounded.signum() < 0 ? "−" + text.substring(1) : text;
  }
}
