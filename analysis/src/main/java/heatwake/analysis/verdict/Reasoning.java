package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.electrical.DoubtfulSupply;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * From the flags that stand to the verdict. Each flag supports its side by its weight; independent
 * supports add up as probabilities do, 1 - (1 - a)(1 - b). The best supported side is named, one
 * with an alarm before those without, less sure by what another side has for it. Without a flag of
 * weight the heater is sound only if something speaks for it.
 */
final class Reasoning {
  /** Support below which no side is named; ours. */
  private static final double LEAST_SUPPORT = 0.35;

  /** Two sides whose supports differ by less than this cannot be told apart; ours. */
  private static final double LEAST_DIFFERENCE = 0.03;

  /**
   * Support from which an alarm's side comes before one that has only warnings: what may harm the
   * heater is mended first; ours.
   */
  private static final double LEAST_OF_ALARM = 0.5;

  /** How much another side's support takes off; ours. */
  private static final double RIVAL_SHARE = 0.4;

  /** What a measurement fault counts beside a machine fault on other evidence; ours. */
  private static final double BESIDE_MACHINE = 0.6;

  /** A heater is called sound at a supply beyond its limits, if not for certain, by this; ours. */
  private static final double AT_DOUBTFUL_SUPPLY = 0.5;

  private static final double MOST_CONFIDENCE = 0.97;

  private final Evidence evidence;
  private final FlagSides sides;
  private final Grounds grounds;

  Reasoning(Evidence evidence, FlagSides sides) {
    this.evidence = evidence;
    this.sides = sides;
    this.grounds = new Grounds(evidence, sides);
  }

  Verdict verdict(List<Flag> flags) {
    Map<Side, Double> support = support(flags);
    List<Map.Entry<Side, Double>> ranked = new ArrayList<>(support.entrySet());
    Set<Side> urgent = urgent(flags, support);
    ranked.sort(
        Comparator.comparing((Map.Entry<Side, Double> one) -> urgent.contains(one.getKey()))
            .thenComparing(Map.Entry.comparingByValue())
            .reversed());
    if (ranked.isEmpty() || ranked.get(0).getValue() < LEAST_SUPPORT) {
      return withoutFlagOfWeight(flags);
    }
    Side side = ranked.get(0).getKey();
    double best = ranked.get(0).getValue();
    double rival = ranked.size() > 1 ? ranked.get(1).getValue() : 0;
    if (side == Side.UNDECIDED) {
      return undecided(flags);
    }
    double confidence = Math.min(MOST_CONFIDENCE, best * (1 - RIVAL_SHARE * rival));
    boolean tie = Math.abs(best - rival) < LEAST_DIFFERENCE;
    List<Reason> because = new ArrayList<>(grounds.reasons(flags, side));
    List<String> wouldDecide = new ArrayList<>(grounds.whatWouldDecide(flags, side));
    HeaterBeside.of(side, flags, evidence)
        .ifPresent(
            heater -> {
              heater.figures().forEach(text -> because.add(new Reason.Sentence(text)));
              wouldDecide.addAll(heater.wouldDecide());
            });
    return new Verdict(
        side, rounded(tie ? confidence * (1 - RIVAL_SHARE) : confidence), because, wouldDecide);
  }

  private Map<Side, Double> support(List<Flag> flags) {
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
    return support;
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

  private Verdict withoutFlagOfWeight(List<Flag> flags) {
    Optional<String> cannotBe = sides.heatDoubt();
    if (cannotBe.isPresent()) {
      return new Verdict(
          Side.MEASUREMENT,
          FlagWeight.OF_IMPOSSIBLE_HEAT,
          List.of(new Reason.Sentence(cannotBe.get())),
          List.of(ImpossibleHeat.NEXT_CHECK));
    }
    Soundness sound = Soundness.of(evidence);
    List<Reason> because = new ArrayList<>();
    sound.because().forEach(text -> because.add(new Reason.Sentence(text)));
    List<String> supply = DoubtfulSupply.words(evidence);
    supply.forEach(text -> because.add(new Reason.Sentence(text)));
    flags.forEach(flag -> because.add(new Reason.Notes(flag)));
    List<String> wouldDecide = new ArrayList<>(sound.wouldDecide());
    if (!supply.isEmpty()) {
      wouldDecide.add(DoubtfulSupply.NEXT_CHECK);
    }
    double confidence =
        supply.isEmpty() ? sound.confidence() : Math.min(AT_DOUBTFUL_SUPPLY, sound.confidence());
    return new Verdict(
        confidence > 0 ? Side.HEALTHY : Side.UNDECIDED, rounded(confidence), because, wouldDecide);
  }

  private Verdict undecided(List<Flag> flags) {
    List<Reason> because = grounds.reasons(flags, Side.UNDECIDED);
    return new Verdict(Side.UNDECIDED, 0, because, grounds.whatWouldDecide(flags, Side.UNDECIDED));
  }

  private static double rounded(double confidence) {
    return Math.round(confidence * 100) / 100.0;
  }
}
