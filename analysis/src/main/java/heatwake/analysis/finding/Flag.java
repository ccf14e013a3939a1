package heatwake.analysis.finding;

import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

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
 * @param channels the readings it rests on; of a measurement flag, the readings it accuses
 * @param consequences flags that this one explains; its evidence names them too
 */
public record Flag(
    String rule,
    Side side,
    Severity severity,
    long startMs,
    long endMs,
    String evidence,
    List<String> causes,
    String nextCheck,
    Set<Channel> channels,
    List<Consequence> consequences) {

  public Flag {
    causes = List.copyOf(causes);
    channels = Set.copyOf(channels);
    consequences = List.copyOf(consequences);
  }

  /** A flag by itself. */
  public Flag(
      String rule,
      Side side,
      Severity severity,
      long startMs,
      long endMs,
      String evidence,
      List<String> causes,
      String nextCheck,
      Set<Channel> channels) {
    this(rule, side, severity, startMs, endMs, evidence, causes, nextCheck, channels, List.of());
  }

  /** A flag that rests on no readings in particular. */
  public Flag(
      String rule,
      Side side,
      Severity severity,
      long startMs,
      long endMs,
      String evidence,
      List<String> causes,
      String nextCheck) {
    this(rule, side, severity, startMs, endMs, evidence, causes, nextCheck, Set.of());
  }

  /** Whether it only tells what happened: it accuses no side and explains nothing. */
  public boolean isANote() {
    return severity == Severity.INFO && side == Side.UNDECIDED;
  }

  /** Its evidence without that of its consequences. */
  public String ownEvidence() {
    int own = consequences.isEmpty() ? -1 : evidence.indexOf(Consequence.LEAD);
    return own < 0 ? evidence : evidence.substring(0, own);
  }

  /** This flag with other evidence. */
  public Flag withEvidence(String other) {
    return new Flag(
        rule, side, severity, startMs, endMs, other, causes, nextCheck, channels, consequences);
  }

  /** This flag on another side. */
  public Flag onSide(Side other) {
    return new Flag(
        rule, other, severity, startMs, endMs, evidence, causes, nextCheck, channels, consequences);
  }

  /** This flag with every sentence said otherwise. */
  public Flag reworded(UnaryOperator<String> said) {
    return new Flag(
        rule,
        side,
        severity,
        startMs,
        endMs,
        said.apply(evidence),
        causes.stream().map(said).toList(),
        said.apply(nextCheck),
        channels,
        consequences.stream()
            .map(one -> new Consequence(one.rule(), said.apply(one.evidence())))
            .toList());
  }
}
