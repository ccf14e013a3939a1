package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import java.util.OptionalDouble;

/**
 * A meter of the heater's draw, and what is known beforehand of what it reads; power in W, current
 * in A.
 *
 * @param channel power or current
 * @param plate greatest draw by the nameplate, if stated
 * @param leastCompressor a top level under this is no compressor, unless the nameplate says
 *     otherwise
 * @param leastFan a fan draws at least this much more than the heater at rest
 * @param beyondFan what no fan draws; infinite where it is not known
 */
record DrawMeter(
    Channel channel,
    OptionalDouble plate,
    double leastCompressor,
    double leastFan,
    double beyondFan) {
  /** Ours. */
  static final double LEAST_COMPRESSOR_W = 400;

  /** Ours. */
  private static final double LEAST_COMPRESSOR_A = 2;

  /** Ours. */
  private static final double LEAST_FAN_W = 25;

  /** Ours. */
  private static final double LEAST_FAN_A = 0.12;

  static DrawMeter power(Heater heater) {
    return new DrawMeter(
        Channel.POWER,
        heater.greatestRatedW(),
        LEAST_COMPRESSOR_W,
        LEAST_FAN_W,
        heater.beyondFanW());
  }

  static DrawMeter current(Heater heater) {
    return new DrawMeter(
        Channel.CURRENT,
        heater.currentMaxA(),
        LEAST_COMPRESSOR_A,
        LEAST_FAN_A,
        Double.POSITIVE_INFINITY);
  }
}
