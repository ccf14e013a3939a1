package heatwake.analysis.rule.water;

import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The least flow a heater should have.
 *
 * @param flowM3PerS the flow
 * @param stated whether the nameplate states it; false for the flow at which the rated heat would
 *     warm the water by {@value #GREATEST_RISE_K} K
 */
record LeastFlow(double flowM3PerS, boolean stated) {
  /**
   * Greatest rise a pool heater is run at where its nameplate states no least flow; common practice
   * is 2 to 3 K, this is twice that.
   */
  static final double GREATEST_RISE_K = 6;

  static final String LIMITS =
      "the flow at which the greatest rated heat would warm the water by 6 K (twice the 2 to 3 K"
          + " of common practice).";

  static Optional<LeastFlow> of(Heater heater) {
    if (heater.flowMinM3PerS().isPresent()) {
      return Optional.of(new LeastFlow(heater.flowMinM3PerS().getAsDouble(), true));
    }
    OptionalDouble rated = heater.greatestRatedHeatW();
    return rated.isPresent()
        ? Optional.of(
            new LeastFlow(
                rated.getAsDouble()
                    / (PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K * GREATEST_RISE_K),
                false))
        : Optional.empty();
  }

  /** The rise that a heat gives at this flow. */
  Estimate rise(Estimate heatW) {
    return heatW.times(1 / (PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K * flowM3PerS));
  }

  /** Says that a flow is below this one. */
  String sentence(double lowM3PerS) {
    return "Flow " + Wording.flow(lowM3PerS) + " is below " + name();
  }

  /** What it is, with its figure. */
  String name() {
    return stated
        ? "the heater's " + Wording.flow(flowM3PerS) + " minimum"
        : Wording.flow(flowM3PerS)
            + ", the flow at which the rated heat warms the water by "
            + Wording.kelvin(GREATEST_RISE_K);
  }
}
