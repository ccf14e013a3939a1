package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The pool as a second witness. What could not be computed is empty.
 *
 * @param storedJ heat the pool itself has gained over the run, from its volume and its warming
 * @param lossAtRestW heat the pool loses with the heater off, from its cooling
 * @param lossModelW mean heat loss over the run by the evaporation equation with convection and
 *     radiation
 * @param warmingKPerS pace of warming while the heater runs, losses included
 * @param poolK pool temperature when it was last seen
 * @param poolMs when that was, UTC milliseconds: a probe in a pipe sees the pool only while water
 *     moves
 * @param setpointMs when the set temperature is reached at that pace with the heater on, UTC
 *     milliseconds; empty if it is not reached, or cannot be told
 * @param setpointUnreachable whether the pace seen would never reach the set temperature
 */
public record PoolFigures(
    Optional<Estimate> storedJ,
    Optional<Estimate> lossAtRestW,
    Optional<Estimate> lossModelW,
    Optional<Estimate> warmingKPerS,
    Optional<Estimate> poolK,
    OptionalLong poolMs,
    OptionalLong setpointMs,
    boolean setpointUnreachable) {

  /** Nothing could be computed. */
  public static final PoolFigures NONE =
      new PoolFigures(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalLong.empty(),
          OptionalLong.empty(),
          false);
}
