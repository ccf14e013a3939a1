package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import java.util.List;

/**
 * A flag as a person reads it.
 *
 * @param title the rule's name
 * @param when when it was seen and for how long
 * @param severity how much it matters
 * @param flag the flag itself, with evidence, causes and next check
 */
public record FlagRow(String title, String when, Severity severity, Flag flag) {
  /** The flags of a run, the gravest first. */
  public static List<FlagRow> of(Findings findings, Moment moment) {
    return findings.flags().stream().map(flag -> of(flag, moment)).toList();
  }

  private static FlagRow of(Flag flag, Moment moment) {
    long lengthMs = flag.endMs() - flag.startMs();
    String when =
        lengthMs < 1000
            ? moment.shortDayAndTime(flag.startMs())
            : moment.span(flag.startMs(), flag.endMs()) + ", " + Moment.duration(lengthMs);
    return new FlagRow(Names.ofRule(flag.rule()), when, flag.severity(), flag);
  }

  /** What was seen of the flag itself. */
  public String evidence() {
    return flag.ownEvidence();
  }

  /** The flags that this one explains: {@code "It explains: Low COP. COP 4.1 where ..."}. */
  public List<String> consequences() {
    return flag.consequences().stream()
        .map(one -> "It explains: " + Names.ofRule(one.rule()) + ". " + one.evidence())
        .toList();
  }

  /** {@code "likely: bypass open too far; or loaded strainer"}; empty when no cause is known. */
  public String causes() {
    return flag.causes().isEmpty() ? "" : "Likely: " + String.join("; or ", flag.causes());
  }
}
