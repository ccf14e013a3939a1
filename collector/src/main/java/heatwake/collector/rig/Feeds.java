package heatwake.collector.rig;

import heatwake.analysis.quantity.Channel;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/**
 * By which way each channel of a rig gets its readings. Only what came the same way can be the same
 * message: two heaters of one site have the same channels, and rigs in two folders the same names.
 */
public final class Feeds {
  private final Map<Channel, Way> ways = new EnumMap<>(Channel.class);

  /**
   * The way of one channel.
   *
   * @param source name of the source; empty if there is none
   * @param at the port or address it is at
   */
  private record Way(String source, String at, ProbeSpec.Address address) {}

  private Feeds() {}

  /** The ways of a rig. */
  public static Feeds of(RigFile rig) {
    Feeds feeds = new Feeds();
    for (ProbeSpec probe : rig.probes()) {
      String source = probe.source().orElse("");
      String at =
          rig.sources().stream()
              .filter(one -> one.name().equals(source))
              .findFirst()
              .map(Feeds::at)
              .orElse("");
      feeds.ways.put(probe.channel(), new Way(source, at, probe.address()));
    }
    return feeds;
  }

  private static String at(SourceSpec source) {
    return source instanceof SourceSpec.Mqtt mqtt ? mqtt.url() : source.ownPort().orElse("");
  }

  /** The channels that get their readings the same way in another rig. */
  public Set<Channel> sharedWith(Feeds other) {
    Set<Channel> shared = EnumSet.noneOf(Channel.class);
    ways.forEach(
        (channel, way) -> {
          if (way.equals(other.ways.get(channel))) {
            shared.add(channel);
          }
        });
    return shared;
  }
}
