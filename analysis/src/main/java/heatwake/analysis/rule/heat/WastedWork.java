package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Whether the compressor's work is badly spent beyond doubt, by its own gauges: what it does of the
 * COP that Carnot allows between evaporating and condensing temperature, at any speed. Valves that
 * leak have it do part of its work twice, and a motor that draws too much heats itself. Everything
 * that is not known is taken in the compressor's favour.
 */
final class WastedWork {
  /**
   * Less than this is no sound compressor's: one that puts no more than 0.45 of its power into the
   * gas (0.5 is little, 0.65 to 0.75 usual: common practice) behind a valve that keeps 0.85 of the
   * cycle still does 0.44.
   */
  private static final double LEAST_SOUND_SHARE = 0.42;

  /**
   * The gas's way through valves and pipes takes so much of the lift, whatever the lift is: 1 to 2
   * K on either side, common practice. At a small lift that is much of it, K.
   */
  private static final double LOST_LIFT_K = 3;

  /** Below this lift a kelvin of either gauge is too much of the share; ours, K. */
  private static final double LEAST_LIFT_K = 10;

  /** A fan takes no more than this of the power at full speed (3 to 8 %: common practice). */
  private static final double FAN_AT_FULL_SPEED = 0.1;

  /** Nor more than this at whatever speed the compressor runs; ours. */
  private static final double MOST_OF_FAN = 0.25;

  private WastedWork() {}

  /** Whether a stretch shows it, no other load being on the heater's meter. */
  static boolean isCertain(Evidence evidence, Duty duty) {
    return evidence.load().shownBy().contains(Channel.POWER)
        && share(evidence, duty).filter(share -> Doubt.below(share, LEAST_SOUND_SHARE)).isPresent();
  }

  /** A clause for a flag's evidence; empty where it is not certain. */
  static Optional<String> words(Evidence evidence, Duty duty) {
    return isCertain(evidence, duty)
        ? share(evidence, duty)
            .map(
                share ->
                    "; with the fan's power left out, the compressor makes "
                        + Wording.percent(share)
                        + " of the heat that Carnot allows between its two temperatures (3 K left to"
                        + " pipes and valves), where sound ones make 45 to 65 %")
        : Optional.empty();
  }

  /** What the compressor alone does of what Carnot allows it at the most. */
  private static Optional<Estimate> share(Evidence evidence, Duty duty) {
    if (!duty.has(
        DutyFigure.HEAT, DutyFigure.POWER, DutyFigure.CONDENSING, DutyFigure.EVAPORATING)) {
      return Optional.empty();
    }
    Estimate condensing = duty.of(DutyFigure.CONDENSING).orElseThrow();
    Estimate lift = condensing.minus(duty.of(DutyFigure.EVAPORATING).orElseThrow());
    Estimate power = duty.of(DutyFigure.POWER).orElseThrow();
    double compressorW = power.value() - fanW(evidence, duty, power.value());
    return lift.value() < LEAST_LIFT_K || compressorW <= 0
        ? Optional.empty()
        : Optional.of(
            duty.of(DutyFigure.HEAT)
                .orElseThrow()
                .dividedBy(new Estimate(compressorW, power.standard()))
                .times(lift.plus(Estimate.exact(LOST_LIFT_K)))
                .times(1 / condensing.value()));
  }

  /** The most that the fan may take: a tenth of the rated power, or more if it was seen to. */
  private static double fanW(Evidence evidence, Duty duty, double powerW) {
    double ofRatedW =
        duty.of(DutyFigure.POWER_RATIO)
            .filter(ratio -> ratio.value() > 0)
            .map(ratio -> FAN_AT_FULL_SPEED * powerW / ratio.value())
            .orElse(powerW);
    return Math.min(MOST_OF_FAN * powerW, Math.max(ofRatedW, FanAhead.watts(evidence).orElse(0)));
  }
}
