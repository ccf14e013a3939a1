package heatwake.collector.frame;

import heatwake.collector.frame.LineDecoder.Line;
import heatwake.collector.rig.SourceSpec.LineFormat;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a stream of lines seems to be.
 *
 * @param format how its lines are written
 * @param fields fields with a number in them and the last text of each, in order of appearance
 * @param unread fields that were never a number, and the last text of each
 * @param time field that holds a time stamp, if one does
 * @param readableLines lines that fit
 * @param lines all lines but headings
 */
public record LineGuess(
    LineFormat format,
    Map<String, String> fields,
    Map<String, String> unread,
    Optional<String> time,
    int readableLines,
    int lines) {

  /** A number from here on is rather milliseconds since 1970 than anything measured. */
  private static final double EPOCH_MS_FROM = 1e12;

  /** The best guess, if any line can be read in any way. */
  public static Optional<LineGuess> of(List<String> lines) {
    // JSON first: what it accepts is no accident. Anything with a comma is CSV of a kind.
    return Stream.of(LineFormat.JSON, LineFormat.KEY_VALUE, LineFormat.CSV)
        .map(format -> read(format, lines))
        .filter(guess -> guess.readableLines > 0)
        .max(
            Comparator.comparingInt(LineGuess::readableLines)
                .thenComparing(LineGuess::format, (a, b) -> rank(b) - rank(a)));
  }

  private static int rank(LineFormat format) {
    return switch (format) {
      case JSON -> 0;
      case KEY_VALUE -> 1;
      case CSV -> 2;
    };
  }

  /** Whether nearly all lines fit and there were some. */
  public boolean isSure() {
    return readableLines >= 2 && readableLines >= 0.8 * lines;
  }

  private static LineGuess read(LineFormat format, List<String> lines) {
    LineDecoder decoder = LineDecoder.of(format, Set.of());
    Map<String, String> numbers = new LinkedHashMap<>();
    Map<String, String> unread = new LinkedHashMap<>();
    Optional<String> time = Optional.empty();
    int readable = 0;
    int headings = 0;
    for (String text : lines) {
      Line line = decoder.decode(text);
      if (line instanceof Line.Heading) {
        // What was called by number so far has a name from here on.
        numbers.clear();
        unread.clear();
        headings++;
      } else if (line instanceof Line.Fields fields && fields.complaint().isEmpty()) {
        boolean any = false;
        for (String name : fields.message().names()) {
          String value = fields.message().field(name).orElse("");
          if (isTime(value)) {
            time = Optional.of(name);
          } else if (SentNumber.number(value).isPresent() || SentNumber.isFault(value)) {
            numbers.put(name, value);
            any = true;
          } else {
            unread.put(name, value);
          }
        }
        readable += any ? 1 : 0;
      }
    }
    unread.keySet().removeAll(numbers.keySet());
    return new LineGuess(format, numbers, unread, time, readable, lines.size() - headings);
  }

  private static boolean isTime(String text) {
    boolean number = SentNumber.number(text).isPresent();
    return SentTime.parse(text).isPresent()
        && (!number || SentNumber.number(text).getAsDouble() >= EPOCH_MS_FROM);
  }
}
