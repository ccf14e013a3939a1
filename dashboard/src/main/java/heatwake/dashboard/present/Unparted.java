package heatwake.dashboard.present;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where no line ends: at the spaces between a number, its uncertainty and its unit, and at the
 * hyphen of a name such as {@code flow-total}.
 */
public final class Unparted {
  private static final char NO_BREAK_SPACE = '\u00a0';

  private static final Pattern SPACE =
      Pattern.compile(
          "(?<=\\d) (?=±)|(?<=±) (?=\\d)|(?<=\\d) (?=(?:%|°[CF]|m[²³]|"
              + "K|[kM]?W|[kM]?Wh|[kM]?J|[kM]?Pa|psi|bar|m?A|V|Hz|L/min|L/s|m³/h|gpm|"
              + "Btu/h|min|h|s|d|kg|g)(?![\\p{L}\\d]))");

  /** A channel's or a rule's name is looked for as a whole. */
  private static final Pattern HYPHEN = Pattern.compile("(?<=\\p{L})-(?=\\p{L})");

  private Unparted() {}

  /** The text with spaces there at which nothing wraps. */
  public static String of(String text) {
    return SPACE.matcher(text).replaceAll(String.valueOf(NO_BREAK_SPACE));
  }

  /** The same text with plain spaces again. */
  public static String plain(String text) {
    return text.replace(NO_BREAK_SPACE, ' ');
  }

  /**
   * Whether a line may end at a space or behind a hyphen.
   *
   * @param at index of the space or hyphen in the text
   */
  public static boolean mayEndAt(CharSequence text, int at) {
    return !stands(SPACE, text, at) && !stands(HYPHEN, text, at);
  }

  private static boolean stands(Pattern pattern, CharSequence text, int at) {
    Matcher matcher = pattern.matcher(text);
    matcher.useTransparentBounds(true).region(at, at + 1);
    return matcher.lookingAt();
  }
}
