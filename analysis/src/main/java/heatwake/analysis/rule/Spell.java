package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The steady running in which a limit was passed.
 *
 * @param mean mean figures over it
 * @param lengthS its length, s
 */
public record Spell(Duty mean, double lengthS) {
  /**
   * A limit passed for less than this of steady running, in all, is no ground for a flag; ours. A
   * run with little steady running must have passed it in most of that.
   */
  private static final double SHORTEST_S = 600;

  private static final double MOST_OF_A_SHORT_RUN = 0.6;

  /**
   * The steady running in which a limit was passed, if it was long enough to count.
   *
   * @param judged the stretches of which it can be told
   * @param passed whether a stretch passed the limit
   */
  public static Optional<Spell> where(List<Duty> judged, Predicate<Duty> passed) {
    List<Duty> beyond = judged.stream().filter(passed).toList();
    double judgedS = judged.stream().mapToDouble(Duty::durationS).sum();
    double beyondS = beyond.stream().mapToDouble(Duty::durationS).sum();
    return beyond.isEmpty() || beyondS < Math.min(SHORTEST_S, MOST_OF_A_SHORT_RUN * judgedS)
        ? Optional.empty()
        : Optional.of(new Spell(Duty.meanOf(beyond), beyondS));
  }

  public long startMs() {
    return mean.startMs();
  }

  public long endMs() {
    return mean.endMs();
  }
}
