package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.StartupCheck.Result;
import java.util.List;

/**
 * A line of the start-up list as a person reads it.
 *
 * @param title what is looked for
 * @param result what came of it
 * @param word the result in words
 * @param evidence what was seen, or what it waits for
 * @param time clock time at which it was decided; empty while it is not
 */
public record StartupRow(String title, Result result, String word, String evidence, String time) {
  /** The start-up list, in its own order. */
  public static List<StartupRow> of(Findings findings, Moment moment) {
    return findings.startup().stream().map(check -> of(check, moment)).toList();
  }

  private static StartupRow of(StartupCheck check, Moment moment) {
    return new StartupRow(
        Names.of(check.check()),
        check.result(),
        wordFor(check.result()),
        check.evidence(),
        check.atMs().isPresent() ? moment.clock(check.atMs().getAsLong()) : "");
  }

  private static String wordFor(Result result) {
    return switch (result) {
      case PASS -> "passed";
      case FAIL -> "failed";
      case NOT_SEEN -> "not seen yet";
      case NOT_MEASURED -> "not measured";
    };
  }

  /**
   * {@code "9 passed, 1 failed, 2 not seen yet, 2 not measured"}; what there is none of is left
   * out.
   */
  public static String summary(List<StartupRow> rows) {
    StringBuilder text = new StringBuilder();
    for (Result result : Result.values()) {
      long count = rows.stream().filter(row -> row.result() == result).count();
      if (count > 0) {
        text.append(text.isEmpty() ? "" : ", ").append(count).append(' ').append(wordFor(result));
      }
    }
    return text.toString();
  }
}
