package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import java.util.Collections;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** An entry of the {@link ConsequenceTable}: a rule whose flag follows from a cause, and when. */
public final class Consequent {
  private final String rule;
  private final Timing timing;
  private final Optional<Condition> condition;

  private Consequent(String rule, Timing timing, Optional<Condition> condition) {
    this.rule = rule;
    this.timing = timing;
    this.condition = condition;
  }

  /** What follows while the cause stands. */
  static Consequent of(String rule) {
    return new Consequent(rule, Timing.TOGETHER, Optional.empty());
  }

  /** The same, and also once the cause has come. */
  Consequent orLater() {
    return new Consequent(rule, Timing.TOGETHER_OR_LATER, condition);
  }

  /** The same, on a condition. */
  Consequent on(Condition asked) {
    return new Consequent(rule, timing, Optional.of(asked));
  }

  /** Id of the rule whose flag follows. */
  public String rule() {
    return rule;
  }

  /** When it follows, in words; empty where it does so whenever the cause stands. */
  public String words() {
    return Stream.concat(
            timing == Timing.TOGETHER_OR_LATER ? Stream.of("then or later") : Stream.empty(),
            condition.stream().map(Condition::words))
        .collect(Collectors.joining(", "));
  }

  /** Whether a flag of this entry's rule follows from a flag of its cause. */
  boolean follows(Flag cause, Flag flag, FlagsOfRun run) {
    return timing.fits(cause, flag)
        && speaksOf(cause, flag)
        && condition.filter(asked -> !asked.holds(cause, flag, run)).isEmpty();
  }

  /** A note explains nothing, and trouble of probes only what accuses the same probe. */
  private static boolean speaksOf(Flag cause, Flag flag) {
    return !cause.isANote()
        && (cause.side() != Side.MEASUREMENT
            || !Collections.disjoint(cause.channels(), flag.channels()));
  }
}
