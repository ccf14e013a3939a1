package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Tells a variable-speed heater that runs slower by choice from one that fails. A slower compressor
 * takes less power in at least the proportion of its heat, so the COP holds or rises; every fault
 * of the circuit lowers heat more than power.
 */
final class PartLoad {
  /** Power below this share of the expected power may be part speed; ours. */
  private static final double POWER_RATIO = 0.95;

  /** A COP at least this share of the expected one has not suffered; ours. */
  private static final double COP_RATIO = 0.94;

  /** Without power, a heater this close to the set temperature may be slowing down; ours. */
  private static final double NEAR_SETPOINT_K = 1.0;

  private PartLoad() {}

  /** Whether part speed explains low heat over a stretch, or cannot be ruled out. */
  static boolean explains(Evidence evidence, Duty duty) {
    Optional<Estimate> power = duty.of(DutyFigure.POWER_RATIO);
    Optional<Estimate> cop = duty.of(DutyFigure.COP_RATIO);
    if (power.isPresent() && cop.isPresent()) {
      return power.get().value() < POWER_RATIO && cop.get().value() > COP_RATIO;
    }
    return evidence.recording().rig().pool().setpointK().isPresent()
        && duty.of(DutyFigure.WATER_IN).isPresent()
        && duty.of(DutyFigure.WATER_IN).get().value()
            > evidence.recording().rig().pool().setpointK().getAsDouble() - NEAR_SETPOINT_K;
  }
}
