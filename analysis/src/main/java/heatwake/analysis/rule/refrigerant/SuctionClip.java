package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;

/**
 * Whether the clip of the suction line is on its line. The gas of a starved coil comes close to the
 * air that enters it, but stays below; a clip that hangs beside the pipe reads the air of the
 * casing, which is no colder than that.
 */
final class SuctionClip {
  private SuctionClip() {}

  /** Whether it reads colder than the entering air by its expanded uncertainty (GUM, k = 2). */
  static boolean isOnItsLine(Duty duty) {
    return duty.of(DutyFigure.SUCTION_EXCESS)
        .filter(excess -> excess.value() + excess.expanded() < 0)
        .isPresent();
  }
}
