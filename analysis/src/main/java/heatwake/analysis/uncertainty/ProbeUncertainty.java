package heatwake.analysis.uncertainty;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;

/**
 * Standard uncertainty of one probe's readings: what the rig states, else a default of ours. It is
 * taken as systematic: the probe errs alike throughout a run, so averaging does not shrink it. The
 * random part is not stated but seen in the readings themselves ({@link Scatter}).
 *
 * @param absolute part that is the same at every reading, SI (kelvin for a temperature)
 * @param share part that goes with the reading, 0.02 for 2 % (of the Celsius reading for a
 *     temperature)
 * @param stated whether the rig states it; false for a default
 */
public record ProbeUncertainty(double absolute, double share, boolean stated) {
  /** Ice point, 0 Cel, K. */
  private static final double ICE_K = 273.15;

  /** The uncertainty of what is clipped to a channel. */
  public static ProbeUncertainty of(Rig rig, Channel channel) {
    Probe probe = rig.probes().get(channel);
    ReadingUncertainty given =
        probe == null ? new ReadingUncertainty.Unstated() : probe.uncertainty();
    if (given instanceof ReadingUncertainty.Absolute one) {
      return new ProbeUncertainty(one.si(), 0, true);
    }
    if (given instanceof ReadingUncertainty.Relative one) {
      return new ProbeUncertainty(0, one.share(), true);
    }
    return unstated(channel.quantity());
  }

  /**
   * What is taken where the rig states nothing; ours, set so that a usual clip-on probe is not
   * flattered.
   */
  public static ProbeUncertainty unstated(Quantity quantity) {
    return switch (quantity) {
      // IEC 60751 class B at 27 Cel is +-0.435 K; rectangular, so divided by the root of three
      // (GUM 4.3.7).
      case TEMPERATURE, TEMPERATURE_DIFFERENCE -> new ProbeUncertainty(0.25, 0, false);
      // Clamp-on and paddle-wheel sensors as installed: common practice.
      case FLOW -> new ProbeUncertainty(0, 0.03, false);
      case PRESSURE -> new ProbeUncertainty(5e3, 0.01, false);
      case POWER, CURRENT -> new ProbeUncertainty(0, 0.02, false);
      case VOLTAGE, ENERGY -> new ProbeUncertainty(0, 0.01, false);
      case RATIO -> new ProbeUncertainty(0.03, 0, false);
      case SPEED -> new ProbeUncertainty(0.3, 0.05, false);
      default -> new ProbeUncertainty(0, 0, false);
    };
  }

  /** Standard uncertainty of the difference of two channels, of their absolute parts alone, SI. */
  public static double ofDifference(Rig rig, Channel one, Channel other) {
    return Math.hypot(of(rig, one).absolute, of(rig, other).absolute);
  }

  /** Standard uncertainty of a reading, SI. */
  public double at(double reading) {
    return Math.hypot(absolute, share * reading);
  }

  /** Standard uncertainty of a temperature reading, K. */
  public double atTemperatureK(double readingK) {
    return Math.hypot(absolute, share * (readingK - ICE_K));
  }
}
