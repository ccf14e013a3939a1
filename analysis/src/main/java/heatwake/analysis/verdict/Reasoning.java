package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.electrical.DoubtfulSupply;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Heater;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * From the flags that stand to the verdict. Each flag supports its side by its weight; independent
 * supports add up as probabilities do, 1 - (1 - a)(1 - b). The best supported side is named, less
 * sure by what another side has for it. Without a flag of weight the heater is sound only if
 * something speaks for it.
 */
final class Reasoning {
  /** Support below which no side is named; ours. */
  private static final double LEAST_SUPPORT = 0.35;

  /** Two sides whose supports differ by less than this cannot be told apart; ours. */
  private static final double LEAST_DIFFERENCE = 0.03;

  /** How much another side's support takes off; ours. */
  private static final double RIVAL_SHARE = 0.4;

  /** What a measurement fault counts beside a machine fault on other evidence; ours. */
  private static final double BESIDE_MACHINE = 0.6;

  /** A heater is called sound at a supply beyond its limits, if not for certain, by this; ours. */
  private static final double AT_DOUBTFUL_SUPPLY = 0.5;

  private static final double MOST_CONFIDENCE = 0.97;
  private static final int MOST_REASONS = 6;

  /**
   * Rules whose flag says that something is wrong with the circuit, but not on which side: low heat
   * and COP by nature, approaches and high pressure because several causes move them alike.
   */
  private static final Set<String> ATTRIBUTED =
      Set.of("low-heat", "low-cop", "condenser-approach", "evaporator-approach", "high-pressure");

  private final Evidence evidence;
  private final ImpossibleHeat impossible;

  Reasoning(Evidence evidence) {
    this.evidence = evidence;
    this.impossible = new ImpossibleHeat(evidence);
  }

  /**
   * Gives such flags the side that the table finds for the time of the flag, and those that rest on
   * a heat that cannot be to the measurement.
   */
  Flag attributed(Flag flag) {
    Optional<String> why = impossible.why(flag);
    if (why.isPresent()) {
      return ImpossibleHeat.handed(flag, why.get());
    }
    return isAttributed(flag) ? flag.onSide(attribution(flag).side()) : flag;
  }

  /** Whether a flag was given to the measurement for a heat that cannot be. */
  boolean isHanded(Flag flag) {
    return impossible.why(flag).isPresent();
  }

  /** Why heat and COP of the run cannot be, in words; empty if they can or are not known. */
  Optional<String> heatDoubt() {
    return impossible.whyOfRun();
  }

  private Attribution attribution(Flag flag) {
    return Attribution.of(DutyDuring.of(flag, evidence), heater());
  }

  private Heater heater() {
    return evidence.recording().rig().heater();
  }

  Verdict verdict(List<Flag> flags) {
    Map<Side, Double> support = support(flags);
    List<Map.Entry<Side, Double>> ranked = new ArrayList<>(support.entrySet());
    ranked.sort(Map.Entry.<Side, Double>comparingByValue().reversed());
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
    boolean tie = best - rival < LEAST_DIFFERENCE;
    List<Reason> because = new ArrayList<>(reasons(flags, side));
    List<String> wouldDecide = new ArrayList<>(whatWouldDecide(flags, side));
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
      boolean byTable = isAttributed(flag) && !isHanded(flag);
      if (byTable && flag.side() != Side.UNDECIDED) {
        weight *= attribution(flag).confidence();
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

  private static boolean blamesMachine(Side side) {
    return side != Side.MEASUREMENT && side != Side.UNDECIDED && side != Side.HEALTHY;
  }

  private static boolean isAttributed(Flag flag) {
    return ATTRIBUTED.contains(flag.rule());
  }

  private Verdict withoutFlagOfWeight(List<Flag> flags) {
    Optional<String> cannotBe = impossible.whyOfRun();
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
    List<Reason> because = reasons(flags, Side.UNDECIDED);
    return new Verdict(Side.UNDECIDED, 0, because, whatWouldDecide(flags, Side.UNDECIDED));
  }

  /** The flags of the side, its heaviest first, then the symptoms, then the flags of others. */
  private List<Reason> reasons(List<Flag> flags, Side side) {
    List<Reason> reasons = new ArrayList<>();
    List<Flag> heaviestFirst = new ArrayList<>(flags);
    heaviestFirst.sort(Comparator.comparingDouble(FlagWeight::of).reversed());
    heaviestFirst.stream()
        .filter(flag -> flag.side() == side)
        .forEach(flag -> reasons.add(new Reason.Blames(flag)));
    heaviestFirst.stream()
        .filter(flag -> flag.side() == side && isAttributed(flag) && !isHanded(flag))
        .findFirst()
        .ifPresent(
            flag -> symptoms(flag, side).forEach(text -> reasons.add(new Reason.Sentence(text))));
    if (flags.stream().noneMatch(this::isHanded)) {
      impossible.whyOfRun().ifPresent(why -> reasons.add(new Reason.Sentence("also " + why)));
    }
    heaviestFirst.stream()
        .filter(flag -> flag.side() != side)
        .forEach(flag -> reasons.add(new Reason.Beside(flag)));
    Set<String> said = new HashSet<>();
    return reasons.stream().filter(one -> said.add(one.text())).limit(MOST_REASONS).toList();
  }

  private List<String> symptoms(Flag flag, Side side) {
    Duty duty = DutyDuring.of(flag, evidence);
    Attribution attribution = Attribution.of(duty, heater());
    List<String> texts = new ArrayList<>();
    texts.add(
        "fits "
            + (side == Side.UNDECIDED
                ? attribution.rivals().stream()
                    .map(Cause::words)
                    .collect(
                        Collectors.joining(" or ", attribution.likeliest().words() + " or ", ""))
                : attribution.likeliest().words()));
    attribution.grades().entrySet().stream()
        .filter(grade -> grade.getValue() != 0)
        .filter(grade -> grade.getKey() != Symptom.HEAT && grade.getKey() != Symptom.COP)
        .sorted(
            Comparator.comparingDouble(
                (Map.Entry<Symptom, Double> grade) -> -Math.abs(grade.getValue())))
        .forEach(
            grade ->
                grade
                    .getKey()
                    .figure(duty, heater())
                    .ifPresent(figure -> texts.add(SymptomText.of(grade.getKey(), figure))));
    return texts;
  }

  /**
   * What would tell the causes of the first such flag of the side apart, then what the flags ask
   * for, those of the side first.
   */
  private List<String> whatWouldDecide(List<Flag> flags, Side side) {
    List<String> texts = new ArrayList<>();
    Recording run = evidence.recording();
    ToKnow toKnow = new ToKnow(run.series().keySet(), run.rig().heater());
    flags.stream()
        .filter(flag -> flag.side() == side && isAttributed(flag) && !isHanded(flag))
        .findFirst()
        .ifPresent(flag -> texts.addAll(WouldDecide.of(attribution(flag), toKnow)));
    Stream.concat(
            flags.stream().filter(flag -> flag.side() == side),
            flags.stream().filter(flag -> flag.side() != side))
        .limit(2)
        .forEach(flag -> texts.add(flag.nextCheck()));
    return texts.stream().distinct().toList();
  }

  private static double rounded(double confidence) {
    return Math.round(confidence * 100) / 100.0;
  }
}
