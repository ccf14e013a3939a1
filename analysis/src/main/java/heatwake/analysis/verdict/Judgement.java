package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Rules;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What comes of putting the evidence before every rule.
 *
 * @param flags rules that fired and stand, the gravest first, then by time
 * @param verdict whose side the trouble is on
 * @param missing which rules could not look and why, one sentence each
 */
public record Judgement(List<Flag> flags, Verdict verdict, List<String> missing) {
  private static final Comparator<Flag> GRAVEST_FIRST =
      Comparator.comparing(Flag::severity).reversed().thenComparingLong(Flag::startMs);

  public Judgement {
    flags = List.copyOf(flags);
    missing = List.copyOf(missing);
  }

  /** Judges the evidence of one run. */
  public static Judgement of(Evidence evidence) {
    List<Flag> raised = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    for (Rule rule : Rules.all()) {
      Outcome outcome = rule.evaluate(evidence);
      if (outcome instanceof Outcome.Flagged flagged) {
        raised.addAll(flagged.flags());
      } else if (outcome instanceof Outcome.NotEnoughData lacking) {
        missing.add(rule.id() + ": " + lacking.reason());
      }
    }
    raised.sort(GRAVEST_FIRST);
    List<Flag> standing =
        Silencing.of(raised).stream().map(flag -> Reasoning.attributed(flag, evidence)).toList();
    List<Flag> roots = new ArrayList<>(Consequences.fold(standing));
    roots.sort(GRAVEST_FIRST);
    return new Judgement(roots, Reasoning.verdict(roots, evidence), missing);
  }
}
