package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.electrical.FanToTheEnd;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.rule.heat.PartLoad;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;

/**
 * What speaks for a heater being sound. Health is not the absence of flags: it takes a figure that
 * a sick heater would not have given, so heat speaks for it by no more than the probability that
 * its uncertainty leaves for the heater not being weak.
 *
 * @param confidence how sure, 0 to 1; 0 where nothing speaks for it
 * @param because what speaks for it, the strongest first
 * @param wouldDecide what would make it surer
 */
record Soundness(double confidence, List<String> because, List<String> wouldDecide) {
  /** What tells part speed from a fault. */
  static final String FULL_SPEED =
      "a run at full speed, with the pool well below its set temperature";

  private static final String LONGER_RUN =
      "record a run in which the heater heats for at least half an hour";

  private static final Soundness NOT_STEADY =
      unproven("the heater was not seen running steadily", LONGER_RUN);

  private static final Soundness NOT_SEEN =
      unproven("the compressor was not seen running", LONGER_RUN);

  private static final Soundness NO_COMPRESSOR =
      unproven(
          "what ran steadily drew no more than a fan may, and warmed the water by next to nothing",
          "see whether the compressor runs then: listen, feel the discharge line, and clip"
              + " pressure-discharge, pressure-suction and temp-discharge");

  static final Soundness NONE = new Soundness(0, List.of(), List.of());

  /** Heat is the whole promised one if it is so surely not low; ours. */
  private static final double SURELY = 0.9;

  static Soundness of(Evidence evidence) {
    if (evidence.duty().isEmpty()) {
      return withoutDuty(evidence);
    }
    Optional<String> away = StayedAway.words(evidence);
    if (away.isPresent()) {
      return unproven(away.get(), StayedAway.NEXT_CHECK);
    }
    Optional<String> fan = FanToTheEnd.words(evidence);
    if (fan.isPresent()) {
      return unproven(fan.get(), FanToTheEnd.NEXT_CHECK);
    }
    Duty mean = Duty.meanOf(evidence.duty());
    Optional<Estimate> heat = mean.of(DutyFigure.HEAT_RATIO);
    PartLoad partLoad = PartLoad.in(evidence);
    // One that gives its whole heat has shown it, however little power it took for that.
    if (partLoad.isShown(mean) && heat.filter(Soundness::isWhole).isEmpty()) {
      return SoundAtPartSpeed.of(mean, partLoad, evidence);
    }
    return heat.map(ratio -> SoundByHeat.of(ratio, mean, evidence))
        .orElseGet(() -> SoundByCircuit.of(mean, evidence));
  }

  /** Of a heater that was not seen at duty. */
  private static Soundness withoutDuty(Evidence evidence) {
    if (!evidence.steady().isEmpty()) {
      return NO_COMPRESSOR;
    }
    return evidence.cycles().isEmpty() ? unseen(evidence) : NOT_STEADY;
  }

  /** Of a compressor that was not seen running: fan or water may tell that it should have. */
  private static Soundness unseen(Evidence evidence) {
    return FanToTheEnd.words(evidence)
        .map(fan -> unproven(fan, FanToTheEnd.NEXT_CHECK))
        .or(() -> NeverCame.words(evidence).map(cold -> unproven(cold, NeverCame.NEXT_CHECK)))
        .orElse(NOT_SEEN);
  }

  private static Soundness unproven(String because, String nextCheck) {
    return new Soundness(0, List.of(because), List.of(nextCheck));
  }

  private static boolean isWhole(Estimate ratio) {
    return ratio.value() >= 1 - Duty.CLOSE_TO_PLATE
        && ratio.probabilityAbove(LowHeat.MATERIAL_RATIO) >= SURELY;
  }
}
