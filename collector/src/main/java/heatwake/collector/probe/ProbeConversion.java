package heatwake.collector.probe;

import heatwake.analysis.sensor.Conversion;
import heatwake.analysis.sensor.Sensed;
import heatwake.analysis.sensor.SensorLoop;
import heatwake.collector.rig.ProbeSpec;
import java.util.Optional;

/**
 * What becomes of a number as a probe sent it until it is stored: times scale, then from its unit,
 * through the sensor's law where the rig names a sensor, to the channel's stored unit. The one
 * place for every kind of source. Counters are remembered from number to number, so one probe has
 * one conversion and one thread uses it.
 */
public final class ProbeConversion {
  private final ProbeSpec probe;
  private final Optional<Conversion> sensor;

  private ProbeConversion(ProbeSpec probe) {
    this.probe = probe;
    this.sensor = probe.sensor().map(SensorLoop::begin);
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

    /** No reading yet: the first count of a counter. */
    record Pending() implements Converted {}
  }

  /**
   * Converts one number as sent.
   *
   * @param timeMs when it was taken, UTC milliseconds
   */
  public Converted convert(double sent, long timeMs) {
    double raw = sent * probe.scale();
    if (sensor.isEmpty()) {
      return value(sent, probe.unit().to(probe.channel().storedUnit(), raw));
    }
    Sensed sensed = sensor.get().next(probe.unit().toSi(raw), timeMs);
    if (sensed instanceof Sensed.Value value) {
      return value(sent, probe.channel().storedUnit().fromSi(value.si()));
    }
    return sensed instanceof Sensed.Fault fault
        ? new Converted.Fault(fault.reason())
        : new Converted.Pending();
  }

  private static Converted value(double sent, double stored) {
    return Double.isFinite(stored)
        ? new Converted.Value(stored)
        : new Converted.Fault(sent + " is not a number");
  }
}
