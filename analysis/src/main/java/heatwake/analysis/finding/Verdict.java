package heatwake.analysis.finding;

import java.util.List;

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
}
