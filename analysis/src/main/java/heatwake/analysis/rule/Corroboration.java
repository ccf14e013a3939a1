package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Whether heat, COP or power bear out what a pressure or temperature suggests. A refrigerant-side
 * figure that is merely unusual may be the heater's own way; one that also costs heat or power is a
 * fault.
 */
public final class Corroboration {
  /**
   * Standard uncertainties by which a second, independent figure must differ: it only has to bear
   * out a first one that is beyond doubt already; ours.
   */
  private static final double FACTOR = 2.5;

  /** The same beside a first figure that is far out itself: the expanded uncertainty, k = 2. */
  private static final double FACTOR_BESIDE_FAR_OUT = 2;

  /** A difference from the nameplate smaller than this bears nothing out; ours. */
  private static final double MATERIAL = 0.05;

  /** A difference from the nameplate that is much; ours. */
  private static final double MUCH = 0.1;

  /** Power over expected power that is no more than the head explains; ours. */
  private static final double EXPLAINED = 1.08;

  private Corroboration() {}

  /**
   * COP below, or power above the nameplate's, as when the compressor works against a high head.
   */
  public static boolean ofHighHead(Duty duty) {
    return ofHighHead(duty, FACTOR);
  }

  /**
   * The same by no more than the expanded uncertainty. The further a first figure is out, the less
   * a second has to say: the two together are as sure.
   */
  public static boolean ofFarOutHead(Duty duty) {
    return ofHighHead(duty, FACTOR_BESIDE_FAR_OUT);
  }

  private static boolean ofHighHead(Duty duty, double factor) {
    return below(duty.of(DutyFigure.COP_RATIO), factor)
        || above(duty.of(DutyFigure.POWER_RATIO), factor);
  }

  /**
   * COP well below and power well above the nameplate's, and the head on the condenser explains the
   * power.
   */
  public static boolean ofHighHeadTwice(Duty duty) {
    boolean explained =
        duty.of(DutyFigure.UNEXPLAINED_POWER_RATIO)
            .filter(ratio -> ratio.value() < EXPLAINED)
            .isPresent();
    return explained
        && ofHighHead(duty)
        && duty.of(DutyFigure.COP_RATIO).filter(cop -> cop.value() < 1 - MUCH).isPresent()
        && duty.of(DutyFigure.POWER_RATIO).filter(power -> power.value() > 1 + MUCH).isPresent()
        && below(duty.of(DutyFigure.COP_RATIO), FACTOR)
        && above(duty.of(DutyFigure.POWER_RATIO), FACTOR);
  }

  /** Heat or COP below the nameplate's. */
  public static boolean ofLostHeat(Duty duty) {
    return below(duty.of(DutyFigure.HEAT_RATIO), FACTOR)
        || below(duty.of(DutyFigure.COP_RATIO), FACTOR);
  }

  /** The same by no more than the expanded uncertainty, beside a first figure that is far out. */
  public static boolean ofLossBesideFarOut(Duty duty) {
    return below(duty.of(DutyFigure.HEAT_RATIO), FACTOR_BESIDE_FAR_OUT)
        || below(duty.of(DutyFigure.COP_RATIO), FACTOR_BESIDE_FAR_OUT);
  }

  /**
   * Whether neither heat nor COP says that the heater gives what it should: not known, or so badly
   * that much less lies within their expanded uncertainty. What they cannot tell is no evidence
   * against what other figures show.
   */
  public static boolean isImpossible(Duty duty) {
    return leavesRoom(duty.of(DutyFigure.HEAT_RATIO)) && leavesRoom(duty.of(DutyFigure.COP_RATIO));
  }

  private static boolean leavesRoom(Optional<Estimate> ratio) {
    return ratio.filter(known -> known.value() - known.expanded() > 1 - MUCH).isEmpty();
  }

  private static boolean below(Optional<Estimate> ratio, double factor) {
    return ratio
        .filter(known -> known.value() + Math.max(factor * known.standard(), MATERIAL) < 1)
        .isPresent();
  }

  private static boolean above(Optional<Estimate> ratio, double factor) {
    return ratio
        .filter(known -> known.value() - Math.max(factor * known.standard(), MATERIAL) > 1)
        .isPresent();
  }
}
