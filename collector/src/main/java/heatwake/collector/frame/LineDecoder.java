package heatwake.collector.frame;

import heatwake.collector.rig.SourceSpec.LineFormat;
import java.util.Optional;
import java.util.Set;

/** Takes lines of one stream apart. */
public interface LineDecoder {
  /** What a line turned out to be. */
  sealed interface Line {
    /**
     * A message.
     *
     * @param complaint what beside its fields could not be understood, if anything
     */
    record Fields(Message message, Optional<String> complaint) implements Line {}

    /** A line that names columns; it holds no readings. */
    record Heading() implements Line {}

    /**
     * Not a message.
     *
     * @param reason for a person
     */
    record Garbage(String reason) implements Line {}
  }

  /** Takes one line apart. */
  Line decode(String text);

  /**
   * Whether a line that may have lost its beginning can still be told from a whole one. JSON can:
   * what is cut is no JSON.
   */
  default boolean provesItself() {
    return false;
  }

  /**
   * A decoder for a stream of lines.
   *
   * @param fields the fields that will be asked for
   */
  static LineDecoder of(LineFormat format, Set<String> fields) {
    return switch (format) {
      case KEY_VALUE -> new KeyValueLines();
      case CSV -> new CsvLines(fields);
      case JSON -> new JsonLines();
    };
  }
}
