package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.uncertainty.Doubt;

/**
 * Whether the suction line is warmer than the air that enters the coil. However short of
 * refrigerant a coil is, its gas gets no warmer than that air: hot gas has come in past the
 * reversing valve, or back through the compressor. Superheat then says nothing of the charge, as
 * long as liquid stands before the expansion device: a liquid line without subcooling shows a want
 * of refrigerant whatever else warms the suction line.
 */
public final class HotSuction {
  /** Beyond this a line is not warmed by its surroundings alone, K; ours. */
  private static final double WARMER_K = 3;

  /** Subcooling above this is liquid, not vapour, before the expansion device, K; ours. */
  private static final double LIQUID_K = 1;

  private HotSuction() {}

  /** Whether it is, beyond doubt; not where suction line, liquid line or air are not read. */
  public static boolean shows(Duty duty) {
    return duty.of(DutyFigure.SUCTION_EXCESS)
            .filter(excess -> Doubt.above(excess, WARMER_K))
            .isPresent()
        && duty.of(DutyFigure.SUBCOOLING)
            .filter(subcooling -> subcooling.value() > LIQUID_K)
            .isPresent();
  }
}
