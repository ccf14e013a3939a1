package heatwake.collector.frame;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Reads a probe's own time stamp: ISO-8601 with an offset or Z, or milliseconds since 1970 UTC. */
public final class SentTime {
  private static final int LONGEST = 40;
  private static final Pattern EPOCH_MS = Pattern.compile("\\d{1,15}(?:\\.0*)?");

  private SentTime() {}

  /** UTC milliseconds; empty if the text is neither form. */
  public static OptionalLong parse(String text) {
    String plain = text.strip();
    if (plain.length() > LONGEST) {
      return OptionalLong.empty();
    }
    if (EPOCH_MS.matcher(plain).matches()) {
      int point = plain.indexOf('.');
      return OptionalLong.of(Long.parseLong(point < 0 ? plain : plain.substring(0, point)));
    }
    try {
      String iso = plain.length() > 10 && plain.charAt(10) == ' ' ? withT(plain) : plain;
      return OptionalLong.of(OffsetDateTime.parse(iso).toInstant().toEpochMilli());
    } catch (DateTimeException | ArithmeticException notATime) {
      return OptionalLong.empty();
    }
  }

  private static String withT(String text) {
    return text.substring(0, 10) + 'T' + text.substring(11);
  }
}
