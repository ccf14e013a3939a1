package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.LiquidEnd;
import heatwake.analysis.rule.Corroboration;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;

/**
 * A condenser that its own refrigerant crowds: liquid backed up in it cools far below its bubble
 * point, and a gas that does not condense adds its pressure at rest too. Either takes area from
 * condensing, so that no sound heater is laid out with much of it and a wide approach at once.
 */
final class CrowdedCondenser {
  /** Subcooling on sound heaters is 4 to 8 K; common practice. */
  private static final double USUAL_SUBCOOLING_K = 8;

  /** Subcooling no heater is laid out for: its liquid would come near the entering water; ours. */
  private static final double GREATEST_SUBCOOLING_K = 14;

  /** Liquid this much below condensing, by itself, beside an approach that is unusual, K; ours. */
  private static final double BACKED_UP_K = 10;

  /** Standing pressure above saturation at the warmest place, K, that no sun explains; ours. */
  private static final double GAS_K = 1;

  /** An approach at full load that is unusual together with either, K; ours. */
  private static final double UNUSUAL_APPROACH_K = 9;

  /** Sound pool heaters condense 4 to 11 K above the leaving water; common practice. */
  private static final double GREATEST_USUAL_APPROACH_K = 11;

  /** An approach at full load that is not small, K; the middle of what is sound. */
  private static final double MIDDLING_APPROACH_K = 7;

  /** Standard uncertainties for a limit that another, independent figure bears out. */
  private static final double BORNE_OUT_FACTOR = 2;

  /** The share of the subcooling speaks for liquid or gas rather than against it. */
  private static final double LIKELIER_THAN_NOT = 0.5;

  private CrowdedCondenser() {}

  /**
   * Whether liquid or gas in the condenser makes it condense too far above the water.
   *
   * @param approach condensing above leaving water, brought to full load
   */
  static boolean shows(Duty duty, Estimate approach) {
    double surelyAtLeast = approach.value() - BORNE_OUT_FACTOR * approach.standard();
    boolean backedUp = surelyHasSubcooling(duty, BACKED_UP_K);
    boolean wider = surelyAtLeast > MIDDLING_APPROACH_K;
    return (surelyAtLeast > UNUSUAL_APPROACH_K && backedUp)
        || (wider && surelyHasSubcooling(duty, GREATEST_SUBCOOLING_K))
        || (wider && hasLiquidOrGas(duty) && Corroboration.ofHighHead(duty))
        || isWideAndFilled(duty, approach);
  }

  /**
   * An approach that is likelier above than within what is sound, liquid well below condensing, and
   * a share of it that no condenser is laid out for: each may be a heater's own way, not all three.
   */
  private static boolean isWideAndFilled(Duty duty, Estimate approach) {
    return approach.value() - approach.standard() > GREATEST_USUAL_APPROACH_K
        && approach.value() - BORNE_OUT_FACTOR * approach.standard() > UNUSUAL_APPROACH_K
        && hasLiquid(duty)
        && duty.has(DutyFigure.SUBCOOLING_SHARE)
        && LiquidEnd.bearsOutMuchLiquid(duty) >= 1;
  }

  /** Whether the refrigerant's own figures, not the water's, point to what is amiss. */
  static boolean pointsToRefrigerant(Duty duty) {
    boolean borneOut = LiquidEnd.bearsOutMuchLiquid(duty) >= LIKELIER_THAN_NOT;
    return (borneOut && (surelyHasSubcooling(duty, BACKED_UP_K) || hasLiquid(duty)))
        || hasGas(duty);
  }

  private static boolean hasLiquidOrGas(Duty duty) {
    return hasLiquid(duty) || hasGas(duty);
  }

  private static boolean hasLiquid(Duty duty) {
    return duty.of(DutyFigure.SUBCOOLING)
        .filter(known -> known.value() - BORNE_OUT_FACTOR * known.standard() > USUAL_SUBCOOLING_K)
        .isPresent();
  }

  private static boolean hasGas(Duty duty) {
    return duty.of(DutyFigure.STANDING_EXCESS)
        .filter(known -> Doubt.above(known, GAS_K))
        .isPresent();
  }

  private static boolean surelyHasSubcooling(Duty duty, double limitK) {
    return duty.of(DutyFigure.SUBCOOLING).filter(known -> Doubt.above(known, limitK)).isPresent();
  }
}
