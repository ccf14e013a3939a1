package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the flags that stand speak for, side by side. Each supports its side by its weight;
 * independent supports add up as probabilities do, 1 - (1 - a)(1 - b). A side with an alarm comes
 * before those without.
 *
 * @param ranked sides with their supports, the one to be named first
 */
record Weighing(List<Map.Entry<Side, Double>> ranked) {
  Weighing {
    ranked = List.copyOf(ranked);
  }

  /** Support below which no side is named; ours. */
  static final double LEAST_SUPPORT = 0.35;

  /** Two sides whose supports differ by less than this cannot be told apart; ours. */
  private static final double LEAST_DIFFERENCE = 0.03;

  /**
   * Support from which an alarm's side comes before one that has only warnings: what may harm the
   * heater is mended first; ours.
   */
  private static final double LEAST_OF_ALARM = 0.5;

  /**
   * What a measurement fault, or the pool's, counts beside a machine fault on other evidence; ours.
   */
  private static final double BESIDE_MACHINE = 0.6;

  /** Sides of the machine, its water, its air and its supply. */
  private static final Set<Side> OF_THE_MACHINE =
      EnumSet.of(Side.REFRIGERANT, Side.WATER, Side.AIRFLOW, Side.ELECTRICAL, Side.CONTROL);

  static Weighing of(List<Flag> flags, FlagSides sides) {
    Map<Side, Double> support = support(flags, sides);
    Set<Side> urgent = urgent(flags, support);
    List<Map.Entry<Side, Double>> ranked = new ArrayList<>(support.entrySet());
    ranked.sort(
        Comparator.comparing((Map.Entry<Side, Double> one) -> urgent.contains(one.getKey()))
            .thenComparing(Map.Entry.comparingByValue())
            .reversed());
    Weighing byWeight = new Weighing(ranked);
    return byWeight.isTie() && isOutlasted(ranked.get(0).getKey(), ranked.get(1).getKey(), flags)
        ? byWeight.withTheSecondFirst()
        : byWeight;
  }

  private Weighing withTheSecondFirst() {
    List<Map.Entry<Side, Double>> swapped = new ArrayList<>(ranked);
    Collections.swap(swapped, 0, 1);
    return new Weighing(swapped);
  }

  /** The side to be named; there has to be one. */
  Side side() {
    return ranked.get(0).getKey();
  }

  /** Its support; none without any. */
  double best() {
    return ranked.isEmpty() ? 0 : ranked.get(0).getValue();
  }

  /** The support of the next side. */
  double rival() {
    return ranked.size() > 1 ? ranked.get(1).getValue() : 0;
  }

  /** Whether the two cannot be told apart. */
  boolean isTie() {
    return ranked.size() > 1 && Math.abs(best() - rival()) < LEAST_DIFFERENCE;
  }

  /**
   * Whether of two that weigh alike the second stood longer, so that it comes first: but not before
   * a doubtful probe, nor before what may harm the heater.
   */
  static boolean isOutlasted(Side first, Side second, List<Flag> flags) {
    return blamesMachine(first)
        && blamesMachine(second)
        && flags.stream().noneMatch(flag -> flag.severity() == Severity.ALARM)
        && stoodS(flags, second) > stoodS(flags, first);
  }

  private static double stoodS(List<Flag> flags, Side side) {
    return flags.stream()
        .filter(flag -> flag.side() == side && !flag.isANote())
        .mapToDouble(flag -> (flag.endMs() - flag.startMs()) / 1e3)
        .max()
        .orElse(0);
  }

  private static Map<Side, Double> support(List<Flag> flags, FlagSides sides) {
    Map<Side, Double> support = new EnumMap<>(Side.class);
    for (Flag flag : flags) {
      if (flag.isANote()) {
        continue;
      }
      double weight = FlagWeight.of(flag);
      if (sides.isByTable(flag) && flag.side() != Side.UNDECIDED) {
        weight *= sides.attribution(flag).confidence();
      }
      support.merge(flag.side(), weight, (a, b) -> 1 - (1 - a) * (1 - b));
    }
    boolean machine =
        support.entrySet().stream()
            .anyMatch(one -> blamesMachine(one.getKey()) && one.getValue() >= LEAST_SUPPORT);
    if (machine) {
      // What still stands after silencing rests on other readings than the doubtful ones.
      support.computeIfPresent(Side.MEASUREMENT, (side, value) -> value * BESIDE_MACHINE);
    }
    if (flags.stream().anyMatch(flag -> showsOnTheMachineItself(flag, support))) {
      support.computeIfPresent(Side.POOL, (side, value) -> value * BESIDE_MACHINE);
    }
    return support;
  }

  /**
   * Whether a flag blames the machine or what it works between by figures that are not the heat. A
   * pool that loses its heat does so beside a sound heater and beside an ailing one: it speaks
   * against no such flag, and the heater is mended first.
   */
  private static boolean showsOnTheMachineItself(Flag flag, Map<Side, Double> support) {
    return OF_THE_MACHINE.contains(flag.side())
        && !flag.isANote()
        && !ImpossibleHeat.RESTS_ON_HEAT.contains(flag.rule())
        && support.getOrDefault(flag.side(), 0.0) >= LEAST_SUPPORT;
  }

  /** Sides of the machine and its surroundings that an alarm speaks for. */
  private static Set<Side> urgent(List<Flag> flags, Map<Side, Double> support) {
    return flags.stream()
        .filter(flag -> flag.severity() == Severity.ALARM && blamesMachine(flag.side()))
        .map(Flag::side)
        .filter(side -> support.getOrDefault(side, 0.0) >= LEAST_OF_ALARM)
        .collect(Collectors.toSet());
  }

  private static boolean blamesMachine(Side side) {
    return side != Side.MEASUREMENT && side != Side.UNDECIDED && side != Side.HEALTHY;
  }
}
