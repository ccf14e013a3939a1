package heatwake.collector.probe;

import heatwake.collector.rig.ProbeSpec;

/**
 * What becomes of a number as a probe sent it until it is stored: times scale, then from its unit
 * to the channel's stored unit. The one place for every kind of source.
 */
public final class ProbeConversion {
  private final ProbeSpec probe;

  private ProbeConversion(ProbeSpec probe) {
    this.probe = probe;
  }

  /** The conversion a probe's entry in the rig asks for. */
  public static ProbeConversion of(ProbeSpec probe) {
    return new ProbeConversion(probe);
  }

  /** What a number as sent turned out to be. */
  public sealed interface Converted {
    /**
     * A reading.
     *
     * @param stored in the channel's stored unit
     */
    record Value(double stored) implements Converted {}

    /**
     * No reading: the sensor says that it is broken.
     *
     * @param reason for a person
     */
    record Fault(String reason) implements Converted {}
  }

  /** Converts one number as sent. */
  public Converted convert(double sent) {
    double stored = probe.unit().to(probe.channel().storedUnit(), sent * probe.scale());
    return Double.isFinite(stored)
        ? new Converted.Value(stored)
        : new Converted.Fault(sent + " is not a number");
  }
}
