package heatwake.collector.rig;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.sensor.SensorLoop;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One probe, as the rig states it.
 *
 * @param channel what it measures
 * @param source name of its source; empty in a rig for import
 * @param address where in the source its value is
 * @param unit unit of the value as sent; of the raw value where there is a sensor
 * @param scale factor applied to the number as sent before the unit (1 where not stated)
 * @param time where in a message the probe's own time stamp is, as a key, column or JSON pointer
 * @param intervalS stated time between readings
 * @param sensor what turns the raw value of a sensor loop into the quantity; empty where the probe
 *     sends the quantity itself
 */
public record ProbeSpec(
    Channel channel,
    Optional<String> source,
    Address address,
    Unit unit,
    double scale,
    Optional<String> time,
    OptionalDouble intervalS,
    Optional<SensorLoop> sensor) {

  /** A probe that sends its quantity itself. */
  public ProbeSpec(
      Channel channel,
      Optional<String> source,
      Address address,
      Unit unit,
      double scale,
      Optional<String> time,
      OptionalDouble intervalS) {
    this(channel, source, address, unit, scale, time, intervalS, Optional.empty());
  }

  /** Where in its source a probe's value is. */
  public sealed interface Address {
    /** A key, a CSV column or a JSON pointer in a line of text. */
    record Field(String field) implements Address {}

    /**
     * An MQTT topic.
     *
     * @param filter topic filter, wildcards allowed
     * @param pointer JSON pointer; empty where the payload is a bare number
     */
    record Topic(String filter, Optional<String> pointer) implements Address {}

    /**
     * A Modbus register.
     *
     * @param table which table it is in
     * @param number zero-based
     */
    record Register(int unitId, Table table, int number, RegisterType type, WordOrder wordOrder)
        implements Address {}

    /** Nowhere: the rig serves for import. */
    record None() implements Address {}
  }

  /** A Modbus register table. */
  public enum Table {
    /** Function 4. */
    INPUT,
    /** Function 3. */
    HOLDING
  }

  /** How a number lies in registers. */
  public enum RegisterType {
    INT16(1),
    UINT16(1),
    INT32(2),
    UINT32(2),
    FLOAT32(2);

    private final int words;

    RegisterType(int words) {
      this.words = words;
    }

    /** Registers it takes. */
    public int words() {
      return words;
    }
  }

  /** Which word of a 32-bit number comes first. */
  public enum WordOrder {
    BIG,
    LITTLE
  }
}
