package heatwake.collector.mistake;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds what a mistyped word was probably meant to be. */
public final class NearestWord {
  private NearestWord() {}

  /** The known word nearest to {@code word}, if one is near enough to be meant. */
  public static Optional<String> to(String word, Collection<String> known) {
    int limit = Math.max(1, word.length() / 3);
    return known.stream()
        .min(Comparator.comparingInt(candidate -> distance(word, candidate)))
        .filter(candidate -> distance(word, candidate) <= limit);
  }

  /**
   * {@code "; did you mean \"x\"?"} where a word is near, else {@code "; known are x, y"}: the end
   * of a message about an unknown word.
   */
  public static String advice(String word, Collection<String> known) {
    return to(word, known)
        .map(near -> "; did you mean \"" + near + "\"?")
        .orElseGet(() -> "; known are " + String.join(", ", known));
  }

  /**
   * Edits (one letter put in, left out, changed, or two neighbours exchanged) between two words.
   */
  private static int distance(String from, String to) {
    String a = from.toLowerCase(Locale.ROOT).replace('_', '-');
    String b = to.toLowerCase(Locale.ROOT);
    int[][] edits = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          edits[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int best = Math.min(edits[i - 1][j], edits[i][j - 1]) + 1;
        best = Math.min(best, edits[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          best = Math.min(best, edits[i - 2][j - 2] + 1);
        }
        edits[i][j] = best;
      }
    }
    return edits[a.length()][b.length()];
  }
}
