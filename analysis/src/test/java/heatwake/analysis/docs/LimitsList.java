package heatwake.analysis.docs;

import java.util.List;
import java.util.regex.Pattern;

/**
 * Limits of a rule as a list: a point for each sentence, and under it one for each of its parts.
 */
final class LimitsList {
  private static final Pattern SENTENCE = Pattern.compile("(?<=\\.) (?=[A-Z0-9])");

  /** Parts of a sentence; what stands in brackets is read on. */
  private static final Pattern PART = Pattern.compile("; (?=[^()]*(?:\\([^()]*\\)[^()]*)*$)");

  private LimitsList() {}

  /** In Markdown; of a single plain sentence, that sentence. */
  static String of(String limits) {
    List<String> sentences = SENTENCE.splitAsStream(limits).toList();
    if (sentences.size() == 1 && parts(limits).size() == 1) {
      return " " + limits;
    }
    StringBuilder list = new StringBuilder("%n".formatted());
    for (String sentence : sentences) {
      List<String> parts = parts(sentence);
      for (int i = 0; i < parts.size(); i++) {
        list.append("%n%s- %s".formatted(i == 0 ? "" : "  ", parts.get(i)));
      }
    }
    return list.toString();
  }

  private static List<String> parts(String sentence) {
    return PART.splitAsStream(sentence).toList();
  }
}
