package heatwake.collector.csv;

/** Numbers in CSV cells: decimal, with a point, as RFC 4180 files from other loggers have them. */
final class CsvNumber {
  private CsvNumber() {}

  /**
   * Reads a number.
   *
   * @throws IllegalArgumentException saying the mend
   */
  static double parse(String text) {
    String number = text.strip();
    for (int i = 0; i < number.length(); i++) {
      // Java's own parser also takes NaN, Infinity, hexadecimal and a trailing d or f.
      if ("0123456789+-.eE".indexOf(number.charAt(i)) < 0) {
        throw notANumber(text);
      }
    }
    double value;
    try {
      value = Double.parseDouble(number);
    } catch (NumberFormatException e) {
      throw notANumber(text);
    }
    if (!Double.isFinite(value)) {
      throw notANumber(text);
    }
    return value;
  }

  private static IllegalArgumentException notANumber(String text) {
    return new IllegalArgumentException(
        "\""
            + CsvRows.shortened(text)
            + "\" is not a number; write it like 27.35, or leave the cell empty for no reading");
  }
}
