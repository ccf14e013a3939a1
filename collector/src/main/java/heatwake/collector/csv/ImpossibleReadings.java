package heatwake.collector.csv;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.store.Store;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalLong;

/** Readings of a file that cannot be true. They are stored like all others, and told of. */
final class ImpossibleReadings {
  private final Map<Channel, Those> channels = new EnumMap<>(Channel.class);

  /** Those of one channel. */
  private record Those(long firstMs, long lastMs, long count, double first) {}

  /**
   * Takes note of a reading if it cannot be true.
   *
   * @param placeMs the run's time where it stands in the file
   * @param stored its value in the channel's stored unit
   */
  void look(Channel channel, long placeMs, double stored) {
    if (!channel.isPossible(stored)) {
      channels.merge(
          channel,
          new Those(placeMs, placeMs, 1, stored),
          (before, now) ->
              new Those(
                  Math.min(before.firstMs, now.firstMs),
                  Math.max(before.lastMs, now.lastMs),
                  before.count + 1,
                  before.first));
    }
  }

  /** Stores an event for each channel that had any. */
  void report(Store store, long run) {
    channels.forEach(
        (channel, those) ->
            store.addEvent(
                run,
                EventKind.OUT_OF_RANGE,
                channel.id(),
                those.firstMs,
                OptionalLong.of(those.lastMs),
                those.count,
                channel
                    + " of "
                    + those.first
                    + " "
                    + channel.storedUnit().code()
                    + " cannot be; possible is "
                    + channel.possibleRange()));
  }
}
