package heatwake.analysis.circuit;

import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;

/**
 * Water that the coil takes out of the air. The heat that the air gives up is the heat to the water
 * less the electric power (fan and losses left aside); how it divides into cooling and drying
 * follows from the air on both sides, leaving nearly saturated where the coil is wet.
 */
public final class Condensate {
  /** Air off a wet coil is about this humid; common practice. */
  private static final double LEAVING_HUMIDITY = 0.95;

  private Condensate() {}

  /**
   * Condensate rate.
   *
   * @param heatW heat given to the water
   * @param powerW electric power
   * @param inK entering air
   * @param humidity its relative humidity, 0 to 1
   * @param outK leaving air
   * @param pressure of the air
   * @return kg/s, zero for a dry coil; NaN if the air is not cooled at all
   */
  public static double kgPerS(
      double heatW,
      double powerW,
      double inK,
      double humidity,
      double outK,
      AbsolutePressure pressure) {
    MoistAir in = MoistAir.of(inK, Math.max(0, Math.min(1, humidity)), pressure);
    MoistAir saturated = MoistAir.of(outK, LEAVING_HUMIDITY, pressure);
    double outRatio = Math.min(in.humidityRatio(), saturated.humidityRatio());
    MoistAir out = new MoistAir(outK, outRatio, pressure);
    double fallJPerKg = in.enthalpyJPerKgDryAir() - out.enthalpyJPerKgDryAir();
    if (fallJPerKg <= 0) {
      return Double.NaN;
    }
    double dryAirKgPerS = Math.max(0, heatW - powerW) / fallJPerKg;
    return dryAirKgPerS * (in.humidityRatio() - outRatio);
  }
}
