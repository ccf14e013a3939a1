package heatwake.analysis.finding;

import java.util.List;

/**
 * A rule that fired.
 *
 * @param rule id of the rule
 * @param side whose side it points to
 * @param severity how much it matters
 * @param startMs from when, UTC milliseconds
 * @param endMs until when
 * @param evidence what was seen, in plain words with numbers and units
 * @param causes likely causes, the likeliest first
 * @param nextCheck what a technician can check on site to decide
 */
public record Flag(
    String rule,
    Side side,
    Severity severity,
    long startMs,
    long endMs,
    String evidence,
    List<String> causes,
    String nextCheck) {

  public Flag {
    causes = List.copyOf(causes);
  }
}
