package heatwake.analysis.duty;

import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** Air through the coil, from the heat it gave up and what that did to it. */
final class CoilAir {
  /** Air off a wet coil is about this humid; common practice. */
  private static final double LEAVING_HUMIDITY = 0.95;

  /** What taking the leaving air's humidity for granted may cost, relative; ours. */
  private static final double MODEL_SHARE = 0.08;

  /** A drop smaller than this tells nothing of the flow, K. */
  private static final double LEAST_DROP_K = 1;

  private CoilAir() {}

  /**
   * Dry air through the coil, kg/s.
   *
   * @param fromAirW heat taken from the air
   * @param airK entering air
   * @param dropK entering less leaving air
   * @param humidity relative humidity of the entering air, 0 to 1
   * @return empty if the air is hardly cooled
   */
  static Optional<Estimate> kgPerS(
      Estimate fromAirW, double airK, Estimate dropK, double humidity, AbsolutePressure pressure) {
    if (dropK.value() < LEAST_DROP_K || fromAirW.value() <= 0) {
      return Optional.empty();
    }
    MoistAir in = MoistAir.of(airK, Math.max(0.02, Math.min(1, humidity)), pressure);
    double outK = airK - dropK.value();
    double saturated = MoistAir.of(outK, LEAVING_HUMIDITY, pressure).humidityRatio();
    MoistAir out = new MoistAir(outK, Math.min(in.humidityRatio(), saturated), pressure);
    double fall = in.enthalpyJPerKgDryAir() - out.enthalpyJPerKgDryAir();
    if (fall <= 0) {
      return Optional.empty();
    }
    double flow = fromAirW.value() / fall;
    double relative =
        Math.hypot(
            MODEL_SHARE,
            Math.hypot(fromAirW.standard() / fromAirW.value(), dropK.standard() / dropK.value()));
    return Optional.of(new Estimate(flow, flow * relative));
  }
}
