package heatwake.analysis.rule;

import heatwake.analysis.finding.Flag;
import java.util.List;

/** What a rule has to say. */
public sealed interface Outcome {
  /** It looked and found nothing. */
  record Clear() implements Outcome {}

  /** It fired. */
  record Flagged(List<Flag> flags) implements Outcome {
    public Flagged {
      flags = List.copyOf(flags);
      if (flags.isEmpty()) {
        throw new IllegalArgumentException("a rule that fired must say with what");
      }
    }
  }

  /** It could not look; the reason says what to clip or state for it. */
  record NotEnoughData(String reason) implements Outcome {}

  static Outcome clear() {
    return new Clear();
  }

  static Outcome flagged(Flag flag) {
    return new Flagged(List.of(flag));
  }

  /** Clear if there are none, flagged otherwise. */
  static Outcome of(List<Flag> flags) {
    return flags.isEmpty() ? new Clear() : new Flagged(flags);
  }

  static Outcome notEnoughData(String reason) {
    return new NotEnoughData(reason);
  }
}
