package heatwake.analysis.finding;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Whose side the trouble is on.
 *
 * @param side the side, {@link Side#HEALTHY} or {@link Side#UNDECIDED}
 * @param confidence 0 to 1
 * @param reasons the strongest first
 * @param wouldDecide what to clip or do to be surer; empty when nothing would
 */
public record Verdict(
    Side side, double confidence, List<Reason> reasons, List<String> wouldDecide) {
  public Verdict {
    reasons = List.copyOf(reasons);
    wouldDecide = List.copyOf(wouldDecide);
  }

  /** The reasons in words, the strongest first. */
  public List<String> because() {
    return reasons.stream().map(Reason::text).toList();
  }

  /** This verdict with every sentence said otherwise. */
  public Verdict reworded(UnaryOperator<String> said) {
    return new Verdict(
        side,
        confidence,
        reasons.stream().map(reason -> reason.reworded(said)).toList(),
        wouldDecide.stream().map(said).toList());
  }
}
