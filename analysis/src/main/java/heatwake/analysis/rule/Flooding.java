package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;

/**
 * Whether liquid leaves the coil. Vapour is superheated only once no liquid is left beside it, so a
 * coil without superheat has more refrigerant than it evaporates: it is not short of it. What
 * stands in the coil is missing before the expansion device, so that little subcooling goes with it
 * and is no second sign. A fixed orifice does so in cool air or at low load, since it passes by the
 * pressures what the coil no longer evaporates (in the fixed-orifice table of Rossi and Braun,
 * HVAC&amp;R Research 3(1), 1997, a fouled coil lowers superheat and subcooling together).
 */
public final class Flooding {
  /**
   * Superheat below this is less than any valve in control leaves, K; common practice: 4 to 8 K.
   */
  private static final double LITTLE_SUPERHEAT_K = 2;

  private Flooding() {}

  /** Whether superheat is known and too little by more than its uncertainty. */
  public static boolean shows(Duty duty) {
    return duty.of(DutyFigure.SUPERHEAT)
        .filter(superheat -> superheat.value() + superheat.standard() < LITTLE_SUPERHEAT_K)
        .isPresent();
  }
}
