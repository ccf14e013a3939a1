package heatwake.analysis.pool;

import heatwake.analysis.uncertainty.Estimate;
import java.util.OptionalDouble;

/**
 * How long a pool takes to warm: C dT/dt = N - S (T - T0), with capacity C, net heat N now (heat
 * given less heat lost) and a loss that grows by S for each kelvin. So T nears T0 + N/S, and a rise
 * of D takes -(C/S) ln(1 - S D / N), or C D / N where the loss does not grow.
 *
 * @param capacityJPerK heat for one kelvin, above zero
 * @param netW heat given to the water less what it loses, at the present temperature
 * @param slopeWPerK growth of the loss per kelvin, not negative
 */
public record HeatUp(Estimate capacityJPerK, Estimate netW, Estimate slopeWPerK) {
  public HeatUp {
    if (!(capacityJPerK.value() > 0) || !(slopeWPerK.value() >= 0)) {
      throw new IllegalArgumentException(
          "a pool needs a heat capacity above zero and a loss that does not fall, not "
              + capacityJPerK.value()
              + " J/K and "
              + slopeWPerK.value()
              + " W/K");
    }
  }

  /** What comes of waiting. */
  public sealed interface Answer {
    /** It is as warm already. */
    record Already() implements Answer {}

    /**
     * It gets there.
     *
     * @param seconds most likely time
     * @param earliestS lower end of the interval with coverage factor 2
     * @param latestS upper end; empty where within it the temperature may never be reached
     */
    record Reached(double seconds, double earliestS, OptionalDouble latestS) implements Answer {}

    /**
     * It does not get there.
     *
     * @param riseK rise at which heat and loss would balance; negative where the pool cools
     */
    record Never(double riseK) implements Answer {}
  }

  /** Time to a rise above the present temperature. */
  public Answer to(double riseK) {
    if (riseK <= 0) {
      return new Answer.Already();
    }
    double seconds = seconds(riseK, capacityJPerK.value(), netW.value(), slopeWPerK.value());
    if (Double.isInfinite(seconds)) {
      return new Answer.Never(
          slopeWPerK.value() > 0 ? netW.value() / slopeWPerK.value() : Math.min(0, netW.value()));
    }
    double later = deviation(riseK, seconds, 1);
    return new Answer.Reached(
        seconds,
        Math.max(0, seconds - deviation(riseK, seconds, -1)),
        Double.isInfinite(later) ? OptionalDouble.empty() : OptionalDouble.of(seconds + later));
  }

  /** The same with net heat at the upper and growth of the loss at the lower end of uncertainty. */
  public HeatUp atBest() {
    return new HeatUp(
        Estimate.exact(capacityJPerK.value()),
        Estimate.exact(netW.value() + netW.expanded()),
        Estimate.exact(Math.max(0, slopeWPerK.value() - slopeWPerK.expanded())));
  }

  /** Most likely time to a rise above the present temperature; infinite if never reached. */
  public double seconds(double riseK) {
    return riseK <= 0 ? 0 : seconds(riseK, capacityJPerK.value(), netW.value(), slopeWPerK.value());
  }

  /** How far each input's expanded uncertainty moves the time to one side, in quadrature. */
  private double deviation(double riseK, double seconds, int towardsLater) {
    double c = capacityJPerK.value();
    double n = netW.value();
    double s = slopeWPerK.value();
    double byCapacity =
        seconds(riseK, Math.max(0, c + towardsLater * capacityJPerK.expanded()), n, s) - seconds;
    double byNet = seconds(riseK, c, n - towardsLater * netW.expanded(), s) - seconds;
    double bySlope =
        seconds(riseK, c, n, Math.max(0, s + towardsLater * slopeWPerK.expanded())) - seconds;
    return Math.sqrt(byCapacity * byCapacity + byNet * byNet + bySlope * bySlope);
  }

  private static double seconds(double riseK, double capacity, double net, double slope) {
    double spent = slope * riseK / net;
    if (net <= 0 || spent >= 1) {
      return Double.POSITIVE_INFINITY;
    }
    // log1p keeps the limit of a loss that hardly grows.
    return spent < 1e-12 ? capacity * riseK / net : -capacity / slope * Math.log1p(-spent);
  }
}
