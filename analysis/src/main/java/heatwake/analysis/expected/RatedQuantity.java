package heatwake.analysis.expected;

import heatwake.analysis.uncertainty.Estimate;

/**
 * A rated quantity (heat or power), whose logarithm is a plane over the air's wet bulb and the
 * entering water, drawn through the nameplate's points. The logarithm, because heat follows the
 * density of the suction gas, which changes by a share for each kelvin: heaters' published tables
 * bend the same way, about 2.7 % per kelvin from 7 to -7 Cel and 3 % below (common practice). Where
 * points leave a slope open, a usual slope with its own spread stands in; every point that differs
 * in that direction takes over from it. This is linear regression with a prior (Kalman's update,
 * one point at a time), so one point, two or many need no separate treatment, and the uncertainty
 * grows with the distance from what is known.
 *
 * <p>Where the points themselves lie off any plane by more than they may, a plane is not all that
 * there is to this heater (power bends over the air's temperature). Its uncertainty then grows by
 * the Birge ratio, the root of chi squared over its degrees of freedom (R. T. Birge, Physical
 * Review 40 (1932) 207-227, from memory), and between the points it is not better than at them.
 */
final class RatedQuantity {
  /** Rounding and test scatter of one printed point; ours. */
  private static final double POINT_SHARE = 0.015;

  /**
   * How a unit may differ from its nameplate at all points alike: rating schemes commonly allow 5 %
   * (common practice); rectangular with the point's own share that is 0.029.
   */
  private static final double UNIT_SHARE = 0.025;

  /**
   * How much the slope by the wet bulb itself may change for each kelvin beyond the points: some
   * tenths of a per cent per kelvin over ten kelvin, as in those tables; ours.
   */
  private static final double BEND_PER_K2 = 3e-4;

  private static final int UNKNOWNS = 3;

  private final double centreWetBulbK;
  private final double centreWaterK;

  /** Logarithm of the level, and its change per kelvin of wet bulb and of water. */
  private final double[] plane;

  private final double[][] covariance = new double[UNKNOWNS][UNKNOWNS];
  private double chiSquared;
  private int points;
  private double leastWetBulbK = Double.POSITIVE_INFINITY;
  private double greatestWetBulbK = Double.NEGATIVE_INFINITY;

  /** Usual change per kelvin as a share of the rated value, with its standard deviation. */
  record Slope(double perK, double spreadPerK) {}

  /** Starts with nothing but a level and the usual slopes. */
  RatedQuantity(
      double level, double centreWetBulbK, double centreWaterK, Slope wetBulb, Slope water) {
    this.centreWetBulbK = centreWetBulbK;
    this.centreWaterK = centreWaterK;
    this.plane = new double[] {Math.log(level), wetBulb.perK(), water.perK()};
    // The level itself comes from the points alone.
    covariance[0][0] = square(10);
    covariance[1][1] = square(wetBulb.spreadPerK());
    covariance[2][2] = square(water.spreadPerK());
  }

  /** Draws the plane towards one more point. */
  void add(double wetBulbK, double waterK, double value) {
    double[] at = at(wetBulbK, waterK);
    double[] spread = times(at);
    double innovation = Math.log(value) - dot(at, plane);
    double variance = dot(at, spread) + square(POINT_SHARE);
    if (points > 0) {
      chiSquared += square(innovation) / variance;
    }
    points++;
    leastWetBulbK = Math.min(leastWetBulbK, wetBulbK);
    greatestWetBulbK = Math.max(greatestWetBulbK, wetBulbK);
    for (int i = 0; i < UNKNOWNS; i++) {
      plane[i] += spread[i] / variance * innovation;
      for (int j = 0; j < UNKNOWNS; j++) {
        covariance[i][j] -= spread[i] * spread[j] / variance;
      }
    }
  }

  /** The quantity at conditions of their own uncertainty. */
  Estimate at(Estimate wetBulbK, Estimate waterK) {
    double[] at = at(wetBulbK.value(), waterK.value());
    double value = Math.exp(dot(at, plane));
    double birge = birgeRatio();
    double ofPlane = birge * Math.sqrt(Math.max(0, dot(at, times(at))));
    double offPlane = POINT_SHARE * Math.sqrt(square(birge) - 1);
    double ofBend = BEND_PER_K2 / 2 * square(beyondPointsK(wetBulbK.value()));
    double ofConditions = Math.hypot(plane[1] * wetBulbK.standard(), plane[2] * waterK.standard());
    double ofUnit = Math.hypot(UNIT_SHARE, offPlane);
    return new Estimate(
        value, value * Math.hypot(Math.hypot(ofPlane, ofBend), Math.hypot(ofUnit, ofConditions)));
  }

  private double beyondPointsK(double wetBulbK) {
    return Math.max(0, Math.max(leastWetBulbK - wetBulbK, wetBulbK - greatestWetBulbK));
  }

  /** How much further the points lie off the plane than they should; at least 1. */
  private double birgeRatio() {
    return points < 2 ? 1 : Math.max(1, Math.sqrt(chiSquared / (points - 1)));
  }

  private double[] at(double wetBulbK, double waterK) {
    return new double[] {1, wetBulbK - centreWetBulbK, waterK - centreWaterK};
  }

  private double[] times(double[] at) {
    double[] product = new double[UNKNOWNS];
    for (int i = 0; i < UNKNOWNS; i++) {
      product[i] = dot(covariance[i], at);
    }
    return product;
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double square(double value) {
    return value * value;
  }
}
