package heatwake.collector.frame;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Keys and values: {@code t1=23.4 t2=25.1} or {@code t1: 23.4, t2: 25.1}. Pairs are set apart by
 * blanks, commas or semicolons. Words in between, such as a label or a unit, are passed over; a
 * pair that touches something that is none of these is not trusted, its neighbours are.
 */
final class KeyValueLines implements LineDecoder {
  private static final Pattern PAIR =
      Pattern.compile(
          "(?<=^|[\\s,;])(?<key>[\\p{L}_][\\p{L}\\p{N}_./\\[\\]-]*)\\s*[=:]\\s*"
              + "(?<value>[^\\s,;=]+)(?=$|[\\s,;])");

  /** Words with nothing strange in them. */
  private static final Pattern HARMLESS = Pattern.compile("[\\p{L}\\p{N}%°_./#*|()\\s,;-]*");

  private record Pairs(Map<String, String> values) implements Message {
    @Override
    public Optional<String> field(String name) {
      return Optional.ofNullable(values.get(name));
    }

    @Override
    public List<String> names() {
      return List.copyOf(values.keySet());
    }
  }

  @Override
  public Line decode(String text) {
    Map<String, String> pairs = new LinkedHashMap<>();
    Matcher match = PAIR.matcher(text);
    StringBuilder rest = new StringBuilder();
    boolean contradiction = false;
    while (match.find()) {
      String before = pairs.put(match.group("key"), match.group("value"));
      contradiction |= before != null && !before.equals(match.group("value"));
      match.appendReplacement(rest, "");
    }
    match.appendTail(rest);
    if (pairs.isEmpty()) {
      return new Line.Garbage("no key and value");
    }
    if (contradiction) {
      return new Line.Garbage("one key with two values");
    }
    return new Line.Fields(
        new Pairs(pairs),
        HARMLESS.matcher(rest).matches()
            ? Optional.empty()
            : Optional.of("not all of it is keys and values"));
  }
}
