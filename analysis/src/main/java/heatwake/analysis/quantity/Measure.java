package heatwake.analysis.quantity;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a quantity written as a number and a unit, such as {@code "16.5 kW"}. */
public final class Measure {
  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile(
          "\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?+)(?![\\d.])\\s*(\\S.*?)\\s*");

  private Measure() {}

  /**
   * Reads {@code text} as a value of {@code quantity}.
   *
   * @return the value in SI
   * @throws IllegalArgumentException saying what is wrong and how it is written right
   */
  public static double parse(Quantity quantity, String text) {
    Matcher match = NUMBER_AND_UNIT.matcher(text);
    if (!match.matches()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a number with a unit; write it like " + example(quantity));
    }
    return Unit.of(quantity, match.group(2)).toSi(Double.parseDouble(match.group(1)));
  }

  private static String example(Quantity quantity) {
    return "\"12.5 " + quantity.storedUnit().code() + "\"";
  }
}
