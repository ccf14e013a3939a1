package heatwake.collector.frame;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads the text of a value as probes send it. */
public final class SentNumber {
  /** Longer than any number a probe can mean. */
  private static final int LONGEST = 40;

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?");

  private static final Set<String> ON = Set.of("1", "on", "true", "closed", "yes");
  private static final Set<String> OFF = Set.of("0", "off", "false", "open", "no");

  /** What firmware prints when a sensor gives nothing. */
  private static final Set<String> FAULTS =
      Set.of("nan", "null", "none", "inf", "-inf", "infinity", "-infinity", "ovf", "err", "error");

  private SentNumber() {}

  /** A decimal number with a point; empty if the text is anything else. */
  public static OptionalDouble number(String text) {
    String plain = text.strip();
    if (plain.length() > LONGEST || !NUMBER.matcher(plain).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(plain);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** A state: 1 for on, true, closed, yes; 0 for off, false, open, no; or a number. */
  public static OptionalDouble state(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    if (ON.contains(word)) {
      return OptionalDouble.of(1);
    }
    return OFF.contains(word) ? OptionalDouble.of(0) : number(text);
  }

  /** Whether the text is what a probe sends when its sensor gives nothing. */
  public static boolean isFault(String text) {
    return FAULTS.contains(text.strip().toLowerCase(Locale.ROOT));
  }
}
