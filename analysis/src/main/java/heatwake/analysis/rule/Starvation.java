package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;

/**
 * Whether superheat or subcooling show a coil short of refrigerant. Its approaches then say nothing
 * of air or water.
 */
public final class Starvation {
  /** Superheat above this is more than a valve in control leaves, K; common practice. */
  private static final double HIGH_SUPERHEAT_K = 12;

  /** Subcooling below this: vapour in the liquid line, K; common practice. */
  private static final double LOW_SUBCOOLING_K = 1.5;

  private Starvation() {}

  /** Whether either shows. */
  public static boolean shows(Duty duty) {
    return duty.of(DutyFigure.SUPERHEAT)
            .filter(superheat -> superheat.value() > HIGH_SUPERHEAT_K)
            .isPresent()
        || duty.of(DutyFigure.SUBCOOLING)
            .filter(subcooling -> subcooling.value() < LOW_SUBCOOLING_K)
            .isPresent();
  }
}
