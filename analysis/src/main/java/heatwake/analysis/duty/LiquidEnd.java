package heatwake.analysis.duty;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * The last part of a condenser, where the liquid is cooled below its bubble point. What it can be
 * cooled by is the whole difference between bubble point and entering water, so that subcooling
 * grows with any wide approach. The share that is reached is the effectiveness of this end, 1 -
 * exp(-UA / (m cp)), against water that hardly warms there (textbook, heat exchangers). Scale
 * lowers its U and so the share; liquid backed up adds to its area, and a gas that does not
 * condense raises the pressure by itself, so that either makes the share greater.
 */
public final class LiquidEnd {
  /**
   * Share on sound heaters: subcooling of 6 K (usual: 4 to 8 K) where they condense 7.5 K (4 to 11
   * K) above water that has warmed by 3 K (2 to 4 K); common practice.
   */
  private static final double USUAL_SHARE = 6 / (7.5 + 3);

  /** How sound heaters differ in it; ours. */
  private static final double SPREAD = 0.1;

  /** A difference to the water of so few uncertainties has no share. */
  private static final double FEWEST_STANDARDS = 3;

  private LiquidEnd() {}

  /**
   * Subcooling over bubble point above entering water.
   *
   * @param bubbleK bubble point at the high pressure, K
   * @param liquidK liquid line, K
   * @param waterInK entering water, K
   */
  static Optional<Estimate> share(Estimate bubbleK, Estimate liquidK, Estimate waterInK) {
    Estimate available = bubbleK.minus(waterInK);
    if (available.value() <= FEWEST_STANDARDS * available.standard()) {
      return Optional.empty();
    }
    double share = (bubbleK.value() - liquidK.value()) / available.value();
    // GUM eq. 10: the bubble point stands in both differences.
    double ofBubble = (1 - share) * bubbleK.standard();
    double ofWater = share * waterInK.standard();
    return Optional.of(
        new Estimate(
            share,
            Math.hypot(Math.hypot(ofBubble, ofWater), liquidK.standard()) / available.value()));
  }

  /**
   * How far the share bears out that much subcooling is liquid backed up or gas, 0 to 1: half at
   * the usual share, none or all where it differs from that by the spread of sound heaters and its
   * own uncertainty. All where the share is not known.
   */
  public static double bearsOutMuchLiquid(Duty duty) {
    return duty.of(DutyFigure.SUBCOOLING_SHARE)
        .map(
            share ->
                0.5 + 0.5 * (share.value() - USUAL_SHARE) / Math.hypot(SPREAD, share.standard()))
        .map(part -> Math.max(0, Math.min(1, part)))
        .orElse(1.0);
  }
}
