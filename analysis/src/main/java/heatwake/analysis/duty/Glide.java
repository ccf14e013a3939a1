package heatwake.analysis.duty;

import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;

/**
 * The refrigerant's mean temperature in an exchanger. A blend condenses and evaporates over a range
 * of temperatures; what it exchanges heat at is the middle of it, while condensing and evaporating
 * temperature by convention are dew points.
 */
record Glide(Saturation saturation) {
  /** Liquid condenses from dew all the way to bubble point. */
  private static final double CONDENSING_SHARE = 0.5;

  /** Flash gas enters the coil, so that it begins some way up from the bubble point; ours. */
  private static final double EVAPORATING_SHARE = 0.4;

  /** Wider than any glide, so that the bubble point of a dew point is always on the line. */
  private static final double WIDEST_K = 15;

  static Glide of(Refrigerant refrigerant) {
    return new Glide(Saturation.of(refrigerant));
  }

  /** How far the mean of condensing lies below its dew point, K. */
  double belowCondensingK(double dewK) {
    return CONDENSING_SHARE * widthK(dewK);
  }

  /** How far the mean of evaporating lies below its dew point, K. */
  double belowEvaporatingK(double dewK) {
    return EVAPORATING_SHARE * widthK(dewK);
  }

  private double widthK(double dewK) {
    if (!(dewK > Saturation.LOWEST_K + WIDEST_K && dewK < saturation.highestK())) {
      return 0;
    }
    return Math.max(0, dewK - saturation.bubbleTemperatureK(saturation.dewPressure(dewK)));
  }
}
