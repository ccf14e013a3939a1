package heatwake.collector.rig;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * On which line of a TOML text each key and table stands. The TOML library keeps places for syntax
 * errors only; mistakes of meaning need them too. The text must have been parsed before: this reads
 * sound TOML 1.0 and checks nothing.
 *
 * <p>A place is written {@code heater.rating[1].air}: elements of arrays, of tables or otherwise,
 * are counted from 0.
 */
final class KeyLines {
  private final String text;
  private final Map<String, Integer> lines = new HashMap<>();
  private final Map<String, Integer> lastElement = new HashMap<>();
  private int at;
  private int line = 1;

  private KeyLines(String text) {
    this.text = text;
  }

  /** Reads the places of all keys and tables of a text. */
  static KeyLines of(String text) {
    KeyLines lines = new KeyLines(text);
    lines.readDocument();
    return lines;
  }

  /** Line of a key or table, the first being 1; 1 for what is not there. */
  int of(String place, String orElse) {
    return lines.getOrDefault(place, lines.getOrDefault(orElse, 1));
  }

  private void readDocument() {
    String table = "";
    skipBlank();
    while (at < text.length()) {
      if (peek() == '[') {
        table = readHeader();
      } else {
        readKeyAndValue(table);
      }
      skipBlank();
    }
  }

  private String readHeader() {
    next();
    boolean element = peek() == '[';
    if (element) {
      next();
    }
    int headerLine = line;
    List<String> parts = readKey();
    String place = "";
    for (int i = 0; i < parts.size(); i++) {
      place = join(place, parts.get(i));
      if (element && i == parts.size() - 1) {
        place += "[" + lastElement.merge(place, 0, (before, zero) -> before + 1) + "]";
      } else if (lastElement.containsKey(place)) {
        place += "[" + lastElement.get(place) + "]";
      }
      lines.putIfAbsent(place, headerLine);
    }
    while (peek() == ']') {
      next();
    }
    return place;
  }

  private void readKeyAndValue(String table) {
    int keyLine = line;
    String place = table;
    for (String part : readKey()) {
      place = join(place, part);
      lines.putIfAbsent(place, keyLine);
    }
    if (peek() == '=') {
      next();
    }
    skipBlank();
    readValue(place);
  }

  private void readValue(String place) {
    char first = peek();
    if (first == '"' || first == '\'') {
      readString();
    } else if (first == '[') {
      readArray(place);
    } else if (first == '{') {
      next();
      skipSeparators();
      while (peek() != '}' && at < text.length()) {
        readKeyAndValue(place);
        skipSeparators();
      }
      next();
    } else {
      while (at < text.length() && ",]}#\n".indexOf(peek()) < 0) {
        next();
      }
    }
  }

  private void readArray(String place) {
    next();
    skipSeparators();
    for (int i = 0; peek() != ']' && at < text.length(); i++) {
      String element = place + "[" + i + "]";
      lines.putIfAbsent(element, line);
      readValue(element);
      skipSeparators();
    }
    next();
  }

  private List<String> readKey() {
    List<String> parts = new ArrayList<>();
    StringBuilder bare = new StringBuilder();
    while (at < text.length() && "=]\n".indexOf(peek()) < 0) {
      char c = peek();
      if (c == '"' || c == '\'') {
        bare.append(readString());
      } else if (c == '.') {
        parts.add(bare.toString());
        bare.setLength(0);
        next();
      } else {
        if (!Character.isWhitespace(c)) {
          bare.append(c);
        }
        next();
      }
    }
    parts.add(bare.toString());
    return parts;
  }

  /** Reads a string of any of the four kinds and returns what stands between its quotes. */
  private String readString() {
    char quote = peek();
    String triple = String.valueOf(quote).repeat(3);
    String closing = text.startsWith(triple, at) ? triple : String.valueOf(quote);
    skip(closing.length());
    int start = at;
    while (at < text.length() && !text.startsWith(closing, at)) {
      if (quote == '"' && peek() == '\\') {
        next();
      }
      next();
    }
    String inside = text.substring(start, Math.min(at, text.length()));
    skip(closing.length());
    // Up to two quotes may stand right before the closing three.
    while (closing.length() == 3 && peek() == quote) {
      next();
    }
    return inside;
  }

  private void skipSeparators() {
    skipBlank();
    while (peek() == ',') {
      next();
      skipBlank();
    }
  }

  private void skipBlank() {
    while (at < text.length()) {
      if (peek() == '#') {
        while (at < text.length() && peek() != '\n') {
          next();
        }
      } else if (Character.isWhitespace(peek())) {
        next();
      } else {
        return;
      }
    }
  }

  private static String join(String place, String part) {
    return place.isEmpty() ? part : place + "." + part;
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : '\0';
  }

  private void next() {
    if (peek() == '\n') {
      line++;
    }
    at++;
  }

  private void skip(int count) {
    for (int i = 0; i < count; i++) {
      next();
    }
  }
}
