package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A probe that misleads must not cost anybody a compressor: a measurement flag silences the machine
 * flags that rest on the same readings at the same time.
 */
final class Silencing {
  /** Measurement rules after which the readings they accuse are worth nothing. */
  private static final Set<String> DISCREDITING =
      Set.of("probes-swapped", "probe-slipped", "probe-stuck", "probe-fault");

  /** Rules that count times, which a jump of the clock upsets. */
  private static final Map<String, Set<String>> UPSET =
      Map.of("clock-step", Set.of("short-cycling", "restart-too-soon", "data-gap"));

  /**
   * Rules of another side that give to the measurement a figure that cannot be. Where a probe is
   * accused by name, that is the cause and this its consequence.
   */
  private static final Set<String> FIGURES = Set.of("heat-loss");

  /** A flag is silenced if at least this part of its time is discredited; ours. */
  private static final double LEAST_SHARE = 0.3;

  private Silencing() {}

  /** The flags that stand; a silencing flag says in its evidence what it silenced. */
  static List<Flag> of(List<Flag> raised) {
    List<Flag> standing = new ArrayList<>();
    for (Flag flag : raised) {
      if (raised.stream().noneMatch(other -> silences(other, flag))) {
        standing.add(saying(flag, raised));
      }
    }
    return standing;
  }

  private static boolean silences(Flag by, Flag flag) {
    if (UPSET.getOrDefault(by.rule(), Set.of()).contains(flag.rule())) {
      return by.startMs() <= flag.endMs() && by.endMs() >= flag.startMs();
    }
    return DISCREDITING.contains(by.rule())
        && by.severity() != Severity.INFO
        && (flag.side() != Side.MEASUREMENT || FIGURES.contains(flag.rule()))
        && !Collections.disjoint(by.channels(), flag.channels())
        && Overlap.share(flag, by) >= LEAST_SHARE;
  }

  private static Flag saying(Flag flag, List<Flag> raised) {
    List<String> silenced =
        raised.stream().filter(other -> silences(flag, other)).map(Flag::rule).distinct().toList();
    return silenced.isEmpty()
        ? flag
        : flag.withEvidence(
            flag.evidence() + ". Not held against the heater: " + String.join(", ", silenced));
  }
}
