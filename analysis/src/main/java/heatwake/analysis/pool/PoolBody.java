package heatwake.analysis.pool;

import heatwake.analysis.quantity.OutOfRangeException;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Propagation;
import heatwake.analysis.water.PoolWater;

/**
 * The water of a pool as a store of heat.
 *
 * @param volumeM3 volume
 * @param water its properties
 */
public record PoolBody(Estimate volumeM3, PoolWater water) {
  public PoolBody {
    OutOfRangeException.check("pool volume", volumeM3.value(), "m3", 0.1, 1e5);
  }

  /** Heat for one kelvin at a temperature: volume times density times specific heat. */
  public Estimate capacityJPerK(double waterK) {
    return volumeM3.times(water.densityKgPerM3(waterK) * water.cpJPerKgK(waterK));
  }

  /**
   * Heat gained between two mean temperatures of the pool; negative when it cools. The volume is
   * that at the first temperature, and the water keeps its mass.
   */
  public Estimate gainedJ(Estimate fromK, Estimate toK) {
    return Propagation.of(
        x ->
            x[0]
                * water.densityKgPerM3(fromK.value())
                * (water.enthalpyJPerKg(x[2]) - water.enthalpyJPerKg(x[1])),
        volumeM3,
        fromK,
        toK);
  }
}
