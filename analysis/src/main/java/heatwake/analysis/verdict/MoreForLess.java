package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Heat likelier than not above what any heater gives, and beyond doubt above the nameplate's, at a
 * better COP than it promises. A compressor of variable speed reaches a better COP only by running
 * slower, which costs heat; one that runs faster than rated gives more heat at a worse one (the
 * temperature steps of its exchangers grow with the heat: physics). Both at once are a water
 * probe's or a flow meter's doing.
 */
final class MoreForLess {
  /** A COP from this share of the nameplate's on is better than promised; ours. */
  private static final double BETTER = 1.2;

  /** Plates are tolerated to be 5 % off; common practice. */
  private static final double TOLERATED = 1.05;

  private MoreForLess() {}

  /**
   * Why the heat of a stretch cannot be, in words; empty if it can. The heat is beyond doubt; the
   * COP bears it out by its expanded uncertainty (GUM, k = 2).
   */
  static Optional<String> why(Duty duty) {
    Optional<Estimate> heat = duty.of(DutyFigure.HEAT_RATIO);
    Optional<Estimate> cop = duty.of(DutyFigure.COP_RATIO);
    boolean both =
        heat.filter(one -> one.value() > ImpossibleHeat.MOST_RATIO && Doubt.above(one, TOLERATED))
                .isPresent()
            && cop.filter(one -> one.value() > BETTER && one.value() - one.expanded() > 1)
                .isPresent();
    return both
        ? Optional.of(
            "heat of "
                + Wording.percent(heat.orElseThrow())
                + " of the nameplate's at a COP of "
                + Wording.percent(cop.orElseThrow())
                + " of it cannot be right: a compressor that gives more than its rated heat does so"
                + " at a worse COP, not at a better one")
        : Optional.empty();
  }
}
