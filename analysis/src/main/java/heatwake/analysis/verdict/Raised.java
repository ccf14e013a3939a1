package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Rules;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the rules say before anything is weighed.
 *
 * @param flags rules that fired, the gravest first, then by time
 * @param missing which rules could not look and why, one sentence each
 */
public record Raised(List<Flag> flags, List<String> missing) {
  static final Comparator<Flag> GRAVEST_FIRST =
      Comparator.comparing(Flag::severity).reversed().thenComparingLong(Flag::startMs);

  public Raised {
    flags = List.copyOf(flags);
    missing = List.copyOf(missing);
  }

  /** Puts the evidence of one run before every rule. */
  public static Raised of(Evidence evidence) {
    List<Flag> flags = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    for (Rule rule : Rules.all()) {
      Outcome outcome = rule.evaluate(evidence);
      if (outcome instanceof Outcome.Flagged flagged) {
        flags.addAll(flagged.flags());
      } else if (outcome instanceof Outcome.NotEnoughData lacking) {
        missing.add(rule.id() + ": " + lacking.reason());
      }
    }
    flags.sort(GRAVEST_FIRST);
    return new Raised(flags, missing);
  }
}
