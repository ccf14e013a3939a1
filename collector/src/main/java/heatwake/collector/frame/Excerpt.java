package heatwake.collector.frame;

import java.nio.charset.StandardCharsets;

/** Shows a person some text that came from a wire: shortened, and nothing in it can act. */
public final class Excerpt {
  private static final int LONGEST = 60;

  private Excerpt() {}

  /** The text in quotes, at most sixty characters of it, what cannot be printed as a point. */
  public static String of(String text) {
    StringBuilder shown = new StringBuilder(LONGEST + 4).append('"');
    int end = Math.min(text.length(), LONGEST);
    for (int i = 0; i < end; i++) {
      char c = text.charAt(i);
      shown.append(isPlain(c) ? c : '·');
    }
    if (end < text.length()) {
      shown.append('…');
    }
    return shown.append('"').toString();
  }

  private static boolean isPlain(char c) {
    int type = Character.getType(c);
    return type != Character.CONTROL
        && type != Character.FORMAT
        && type != Character.SURROGATE
        && type != Character.LINE_SEPARATOR
        && type != Character.PARAGRAPH_SEPARATOR
        && type != Character.UNASSIGNED
        && type != Character.PRIVATE_USE
        && c != '\uFFFD';
  }

  /** The beginning of some bytes, read as UTF-8 as far as they are. */
  public static String of(byte[] bytes) {
    int length = Math.min(bytes.length, 4 * LONGEST);
    return of(new String(bytes, 0, length, StandardCharsets.UTF_8));
  }
}
