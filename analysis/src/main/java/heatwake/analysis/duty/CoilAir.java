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
   * @param humidity relative humidity of the entering air, 0 to 1; how far it is known weighs most
   *     where the air is humid and little cooled, for what it gives up is then mostly water
   * @return empty if the air is hardly cooled
   */
  static Optional<Estimate> kgPerS(
      Estimate fromAirW,
      double airK,
      Estimate dropK,
      Estimate humidity,
      AbsolutePressure pressure) {
    if (dropK.value() < LEAST_DROP_K || fromAirW.value() <= 0) {
      return Optional.empty();
    }
    double fall = fallJPerKg(airK, dropK.value(), humidity.value(), pressure);
    if (fall <= 0) {
      return Optional.empty();
    }
    double byHumidity =
        (fallJPerKg(airK, dropK.value(), humidity.value() + humidity.standard(), pressure)
                - fallJPerKg(airK, dropK.value(), humidity.value() - humidity.standard(), pressure))
            / 2;
    double flow = fromAirW.value() / fall;
    double relative =
        Math.hypot(
            Math.hypot(MODEL_SHARE, byHumidity / fall),
            Math.hypot(fromAirW.standard() / fromAirW.value(), dropK.standard() / dropK.value()));
    return Optional.of(new Estimate(flow, flow * relative));
  }

  /** What a kilogram of dry air gives up. */
  private static double fallJPerKg(
      double airK, double dropK, double humidity, AbsolutePressure pressure) {
    MoistAir in = MoistAir.of(airK, Math.max(0.02, Math.min(1, humidity)), pressure);
    double outK = airK - dropK;
    double saturated = MoistAir.of(outK, LEAVING_HUMIDITY, pressure).humidityRatio();
    MoistAir out = new MoistAir(outK, Math.min(in.humidityRatio(), saturated), pressure);
    return in.enthalpyJPerKgDryAir() - out.enthalpyJPerKgDryAir();
  }
}
