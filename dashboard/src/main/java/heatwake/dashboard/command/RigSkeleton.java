package heatwake.dashboard.command;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.frame.Excerpt;
import heatwake.collector.frame.LineGuess;
import heatwake.collector.rig.SourceSpec.LineFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Writes the beginning of a rig file for a port that was listened to. */
final class RigSkeleton {
  /** Stands where a person has to fill in a channel. */
  static final String CHANNEL = "CHANNEL";

  /** Stands where a person has to fill in a unit. */
  static final String UNIT = "UNIT";

  private record Hint(Pattern name, Channel channel) {}

  /** Names that hardly mean anything else. */
  private static final Hint[] HINTS = {
    hint("water[-_ ]?in|t?[-_ ]?inlet|wtr?_in", Channel.WATER_IN),
    hint("water[-_ ]?out|t?[-_ ]?outlet|wtr?_out", Channel.WATER_OUT),
    hint("pool|water[-_ ]?pool", Channel.WATER_POOL),
    hint("flow|flow[-_ ]?rate", Channel.FLOW_HEATER),
    hint("air[-_ ]?in", Channel.AIR_IN),
    hint("air[-_ ]?out", Channel.AIR_OUT),
    hint("ambient|outdoor|air", Channel.AIR_AMBIENT),
    hint("power|watts?", Channel.POWER),
    hint("current|amps?", Channel.CURRENT),
    hint("voltage|volts?", Channel.VOLTAGE),
    hint("energy|kwh", Channel.ENERGY),
    hint("humidity|rh", Channel.HUMIDITY_IN),
  };

  private RigSkeleton() {}

  private static Hint hint(String names, Channel channel) {
    return new Hint(Pattern.compile("(?:" + names + ")", Pattern.CASE_INSENSITIVE), channel);
  }

  /**
   * The TOML of one source and its probes.
   *
   * @param name of the source
   * @param port what to write for the port
   */
  static String of(String name, String port, int baud, LineGuess guess) {
    StringBuilder toml = new StringBuilder();
    toml.append("[[source]]\n");
    line(toml, "name", quoted(name));
    line(toml, "serial", quoted(port));
    line(toml, "baud", Integer.toString(baud));
    line(toml, "lines", quoted(spelt(guess.format())));
    for (Map.Entry<String, String> field : guess.fields().entrySet()) {
      toml.append("\n[[probe]]")
          .append("                          # last said ")
          .append(Excerpt.of(field.getValue()))
          .append('\n');
      line(toml, "channel", quoted(CHANNEL) + "            # " + advice(field.getKey()));
      line(toml, "source", quoted(name));
      line(toml, "field", quoted(field.getKey()));
      guess.time().ifPresent(time -> line(toml, "time", quoted(time)));
      line(toml, "unit", quoted(UNIT));
    }
    if (!guess.unread().isEmpty()) {
      toml.append(
              "\n# Left out, for these fields never said a number (on/off and open/closed can be\n")
          .append("# the state of pump-on or flow-switch):\n");
      guess
          .unread()
          .forEach(
              (field, text) ->
                  toml.append("#   ")
                      .append(Excerpt.of(field))
                      .append(" last said ")
                      .append(Excerpt.of(text))
                      .append('\n'));
    }
    return toml.toString();
  }

  private static String advice(String field) {
    return perhaps(field)
        .map(channel -> "perhaps " + channel + ", in " + channel.storedUnit().code() + "?")
        .orElse("where is it clipped?");
  }

  /** The channel a field's name gives away, if it does. */
  static Optional<Channel> perhaps(String field) {
    String last = field.substring(field.lastIndexOf('/') + 1);
    for (Hint hint : HINTS) {
      if (hint.name().matcher(last).matches()) {
        return Optional.of(hint.channel());
      }
    }
    return Channel.find(last.toLowerCase(Locale.ROOT));
  }

  private static String spelt(LineFormat format) {
    return format.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static void line(StringBuilder toml, String key, String value) {
    toml.append(key).append(" = ").append(value).append('\n');
  }

  /** A TOML basic string. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if (c < ' ' || c == 0x7F) {
        quoted.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
      } else {
        quoted.append(c);
      }
    }
    return quoted.append('"').toString();
  }
}
