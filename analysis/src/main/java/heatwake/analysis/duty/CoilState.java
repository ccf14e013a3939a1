package heatwake.analysis.duty;

import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.uncertainty.Estimate;
import java.util.function.DoubleUnaryOperator;

/**
 * An air coil at work, and what it would do in standard air.
 *
 * <p>How far a sound coil evaporates below the air depends on how humid the air is and how much
 * heat it takes out of it, far more than on the coil. So its approach is brought to one set of
 * conditions: the approach at which the same coil would pass the rated heat in air of 27 Cel and 80
 * %. The coil is taken by Threlkeld's enthalpy potential (ASHRAE Handbook Fundamentals and HVAC
 * Systems, from memory): heat = K (h_air - h_saturated at the refrigerant's temperature) when wet,
 * by temperature when dry, whichever is more; of the resistance 1/K at standard conditions half
 * lies on the air's side and half on the refrigerant's, which grows with the slope of the
 * saturation enthalpy.
 *
 * @param airK entering air
 * @param humidity its relative humidity, 0 to 1
 * @param evaporatingK mean temperature of the refrigerant
 * @param share heat taken from the air over the rated heat taken from it
 * @param pressure of the air
 */
record CoilState(
    Estimate airK,
    Estimate humidity,
    Estimate evaporatingK,
    Estimate share,
    AbsolutePressure pressure) {

  /** Standard air, as most pool heaters are rated in; from memory of the trade. */
  private static final double STANDARD_AIR_K = 273.15 + 27;

  private static final double STANDARD_HUMIDITY = 0.8;

  /** Heat capacity of air, J/(kg K), and slope of the saturation enthalpy at 12 Cel. */
  private static final double AIR_J_PER_KG_K = 1006;

  private static final double STANDARD_SLOPE_J_PER_KG_K = 2900;
  private static final double AIR_SIDE_SHARE = 0.5;
  private static final double SLOPE_STEP_K = 4;
  private static final double GREATEST_APPROACH_K = 60;
  private static final double LEAST_SHARE = 0.2;

  /** The approach that the coil would have at the rated heat in standard air, K. */
  Estimate standardApproachK() {
    double air = airK.value();
    double wet = humidity.value();
    double coil = evaporatingK.value();
    double part = share.value();
    double approach = approachK(air, wet, coil, part);
    double square =
        square(x -> approachK(x, wet, coil, part), airK)
            + square(x -> approachK(air, x, coil, part), humidity)
            + square(x -> approachK(air, wet, x, part), evaporatingK)
            + square(x -> approachK(air, wet, coil, x), share);
    return new Estimate(approach, Math.sqrt(square));
  }

  /** Squared contribution of one input, by the difference it makes (GUM 5.1.3, note 2). */
  private static double square(DoubleUnaryOperator approach, Estimate input) {
    double half =
        (approach.applyAsDouble(input.value() + input.standard())
                - approach.applyAsDouble(input.value() - input.standard()))
            / 2;
    return half * half;
  }

  private double approachK(double air, double wet, double coil, double part) {
    double wanted = drive(air, wet, coil) / Math.max(LEAST_SHARE, part);
    double low = -GREATEST_APPROACH_K / 4;
    double high = GREATEST_APPROACH_K;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (drive(STANDARD_AIR_K, STANDARD_HUMIDITY, STANDARD_AIR_K - middle) < wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** What drives heat into the coil, times its conductance over that at standard conditions. */
  private double drive(double air, double wet, double coil) {
    double entering = MoistAir.of(air, bounded(wet), pressure).enthalpyJPerKgDryAir();
    double saturated = saturated(coil);
    double slope = (saturated(coil + SLOPE_STEP_K) - saturated) / SLOPE_STEP_K;
    double wetDrive = (entering - saturated) * conductance(slope);
    double dryDrive = AIR_J_PER_KG_K * (air - coil) * conductance(AIR_J_PER_KG_K);
    return Math.max(wetDrive, dryDrive);
  }

  private static double conductance(double slope) {
    return 1 / (AIR_SIDE_SHARE + (1 - AIR_SIDE_SHARE) * slope / STANDARD_SLOPE_J_PER_KG_K);
  }

  private double saturated(double coil) {
    return MoistAir.of(Math.max(MoistAir.LOWEST_K, coil), 1, pressure).enthalpyJPerKgDryAir();
  }

  private static double bounded(double wet) {
    return Math.max(0.02, Math.min(1, wet));
  }
}
