package heatwake.analysis.finding;

import java.util.List;

/**
 * Whose side the trouble is on.
 *
 * @param side the side, {@link Side#HEALTHY} or {@link Side#UNDECIDED}
 * @param confidence 0 to 1
 * @param because the reasons, the strongest first
 * @param wouldDecide what to clip or do to be surer; empty when nothing would
 */
public record Verdict(
    Side side, double confidence, List<String> because, List<String> wouldDecide) {
  public Verdict {
    because = List.copyOf(because);
    wouldDecide = List.copyOf(wouldDecide);
  }
}
