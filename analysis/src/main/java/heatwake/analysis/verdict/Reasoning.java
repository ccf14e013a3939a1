package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.electrical.DoubtfulSupply;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * From the flags that stand to the verdict. The best supported side is named ({@link Weighing}),
 * less sure by what another side has for it. Without a flag of weight the heater is sound only if
 * something speaks for it.
 */
final class Reasoning {
  /** How much another side's support takes off; ours. */
  private static final double RIVAL_SHARE = 0.4;

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
    Weighing weighing = Weighing.of(IdleGaps.leftOutOf(flags, evidence), sides);
    if (weighing.best() < Weighing.LEAST_SUPPORT) {
      return withoutFlagOfWeight(flags);
    }
    Side side = weighing.side();
    if (side == Side.UNDECIDED) {
      return undecided(flags);
    }
    double confidence =
        Math.min(MOST_CONFIDENCE, weighing.best() * (1 - RIVAL_SHARE * weighing.rival()));
    List<Reason> because = new ArrayList<>(grounds.reasons(flags, side));
    List<String> wouldDecide = new ArrayList<>(grounds.whatWouldDecide(flags, side));
    HeaterBeside.of(side, flags, evidence)
        .ifPresent(
            heater -> {
              heater.figures().forEach(text -> because.add(new Reason.Sentence(text)));
              wouldDecide.addAll(heater.wouldDecide());
            });
    return new Verdict(
        side,
        rounded(weighing.isTie() ? confidence * (1 - RIVAL_SHARE) : confidence),
        because,
        wouldDecide);
  }

  private Verdict withoutFlagOfWeight(List<Flag> flags) {
    Optional<String> cannotBe = sides.heatDoubt();
    if (cannotBe.isPresent()) {
      return new Verdict(
          Side.MEASUREMENT,
          FlagWeight.OF_IMPOSSIBLE_HEAT,
          List.of(new Reason.Sentence(cannotBe.get())),
          List.of(sides.heatCheck()));
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
