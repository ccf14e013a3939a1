package heatwake.collector.rig;

import java.util.Locale;

/**
 * A rig file's text, for messages.
 *
 * @param name what to call the file
 * @param lines where each key stands
 */
record RigText(String name, KeyLines lines) {
  /** How a choice is written in a rig: {@code key-value} for {@code KEY_VALUE}. */
  static String spelling(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
