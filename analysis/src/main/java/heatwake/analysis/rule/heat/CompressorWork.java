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
 * How well the compressor's work is spent, by its own gauges and no nameplate: what it does of the
 * COP that Carnot allows between evaporating and condensing temperature, whatever the speed and the
 * lift. One that leaks back, or whose valves leak, does part of its work twice, and a motor that
 * draws too much heats itself.
 *
 * <p>What the fan takes of the power, and what of the lift is lost on the way through pipes and
 * valves, is not known. So there are two shares: the least that it may be, by which work is called
 * well spent, and the most that it may be, by which work is called wasted.
 */
final class CompressorWork {
  /**
   * A sound compressor and its expansion valve do 0.5 to 0.6 of Carnot's COP between their own two
   * temperatures (0.65 to 0.75 of the work isentropic, some lost in the valve): common practice. A
   * little less is left to the gauges; what leaks a third of its gas back does 0.4.
   */
  private static final double SOUND_SHARE = 0.48;

  /**
   * Less than this is no sound compressor's: one that puts no more than 0.45 of its power into the
   * gas (0.5 is little, 0.65 to 0.75 usual: common practice) behind a valve that keeps 0.85 of the
   * cycle still does 0.44.
   */
  private static final double LEAST_SOUND_SHARE = 0.42;

  /**
   * The gas's way through valves and pipes takes at most so much of the lift, whatever the lift is:
   * 1 to 2 K on either side, common practice. At a small lift that is much of it, K.
   */
  private static final double MOST_LOST_LIFT_K = 3;

  /** Below this lift a kelvin of either gauge is too much of the share; ours, K. */
  private static final double LEAST_LIFT_K = 10;

  /** A fan takes no more than this of the power at full speed (3 to 8 %: common practice). */
  private static final double FAN_AT_FULL_SPEED = 0.1;

  /** Nor more than this at whatever speed the compressor runs; ours. */
  private static final double MOST_OF_FAN = 0.25;

  private final double fanAheadW;
  private final boolean isAloneOnItsMeter;

  private CompressorWork(double fanAheadW, boolean isAloneOnItsMeter) {
    this.fanAheadW = fanAheadW;
    this.isAloneOnItsMeter = isAloneOnItsMeter;
  }

  /** That of a run, with the fan as it was seen there. */
  static CompressorWork in(Evidence evidence) {
    return new CompressorWork(
        FanAhead.watts(evidence).orElse(0), evidence.load().shownBy().contains(Channel.POWER));
  }

  /** Whether a stretch shows it to be well spent, with nothing taken in its favour. */
  boolean isWellSpent(Duty duty) {
    return leastShare(duty).filter(share -> share.value() > SOUND_SHARE).isPresent();
  }

  /**
   * Whether a stretch shows it to be wasted beyond doubt, everything that is not known being taken
   * in its favour, and no other load being on the heater's meter.
   */
  boolean isWasted(Duty duty) {
    return wasted(duty).isPresent();
  }

  /** A clause for a flag's evidence; empty where it is not wasted beyond doubt. */
  Optional<String> wasteInWords(Duty duty) {
    return wasted(duty)
        .map(
            share ->
                "; with the fan's power left out, the compressor makes "
                    + Wording.percent(share)
                    + " of the heat that Carnot allows between its two temperatures (3 K left to"
                    + " pipes and valves), where sound ones make 45 to 65 %");
  }

  /** The most that it does, where that is too little. */
  private Optional<Estimate> wasted(Duty duty) {
    return isAloneOnItsMeter
        ? mostShare(duty).filter(share -> Doubt.below(share, LEAST_SOUND_SHARE))
        : Optional.empty();
  }

  /** With no more taken for the fan's than was seen, and no lift lost. */
  private Optional<Estimate> leastShare(Duty duty) {
    return share(duty, fanAheadW, 0);
  }

  /** With a tenth of the rated power taken for the fan's, or more if it was seen to take it. */
  private Optional<Estimate> mostShare(Duty duty) {
    double powerW = duty.of(DutyFigure.POWER).map(Estimate::value).orElse(0.0);
    double ofRatedW =
        duty.of(DutyFigure.POWER_RATIO)
            .filter(ratio -> ratio.value() > 0)
            .map(ratio -> FAN_AT_FULL_SPEED * powerW / ratio.value())
            .orElse(powerW);
    return share(duty, Math.max(ofRatedW, fanAheadW), MOST_LOST_LIFT_K);
  }

  /**
   * What the compressor alone does of what Carnot allows it; empty where that is not known, or the
   * lift too small to tell.
   *
   * @param fanW what the fan takes, as far as a fan may, W
   * @param lostLiftK what of the lift is lost on the way through pipes and valves, K
   */
  private static Optional<Estimate> share(Duty duty, double fanW, double lostLiftK) {
    if (!duty.has(
        DutyFigure.HEAT, DutyFigure.POWER, DutyFigure.CONDENSING, DutyFigure.EVAPORATING)) {
      return Optional.empty();
    }
    Estimate condensing = duty.of(DutyFigure.CONDENSING).orElseThrow();
    Estimate lift = condensing.minus(duty.of(DutyFigure.EVAPORATING).orElseThrow());
    Estimate power = duty.of(DutyFigure.POWER).orElseThrow();
    double compressorW = power.value() - Math.min(MOST_OF_FAN * power.value(), fanW);
    return lift.value() < LEAST_LIFT_K || compressorW <= 0
        ? Optional.empty()
        : Optional.of(
            duty.of(DutyFigure.HEAT)
                .orElseThrow()
                .dividedBy(new Estimate(compressorW, power.standard()))
                .times(lift.plus(Estimate.exact(lostLiftK)))
                .times(1 / condensing.value()));
  }
}
