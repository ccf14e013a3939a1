package heatwake.collector.peer;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.collector.rig.ProbeSpec;
import java.util.Optional;
import java.util.OptionalDouble;

/** Probes as a rig would state them. */
public final class Probes {
  private Probes() {}

  /** A bare number on a topic, in the channel's stored unit. */
  public static ProbeSpec topic(Channel channel, String filter) {
    return at(channel, new ProbeSpec.Address.Topic(filter, Optional.empty()), Optional.empty());
  }

  /** A value in JSON on a topic, with a time stamp of its own. */
  public static ProbeSpec topic(Channel channel, String filter, String pointer, String time) {
    return at(
        channel,
        new ProbeSpec.Address.Topic(filter, Optional.of(pointer)),
        Optional.of(time).filter(one -> !one.isEmpty()));
  }

  /** A field of a line. */
  public static ProbeSpec field(Channel channel, String field) {
    return at(channel, new ProbeSpec.Address.Field(field), Optional.empty());
  }

  /** A probe at an address, in the channel's stored unit. */
  public static ProbeSpec at(Channel channel, ProbeSpec.Address address, Optional<String> time) {
    Unit unit = channel.storedUnit();
    return new ProbeSpec(
        channel, Optional.of("source"), address, unit, 1, time, OptionalDouble.empty());
  }
}
