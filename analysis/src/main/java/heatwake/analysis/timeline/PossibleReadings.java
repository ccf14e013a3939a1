package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalLong;

/**
 * The readings of a run that can be true of their channels, with those that were not sent because
 * they were the same.
 *
 * @param series by channel; one without such readings is absent
 * @param intervalMs usual time between readings of each
 */
record PossibleReadings(Map<Channel, Series> series, Map<Channel, Long> intervalMs) {
  static PossibleReadings of(Recording recording) {
    Map<Channel, Series> possible = new EnumMap<>(Channel.class);
    Map<Channel, Long> intervals = new EnumMap<>(Channel.class);
    for (Series series : recording.series().values()) {
      Series kept = Screening.possible(series, recording);
      if (!kept.isEmpty()) {
        Series held = HeldValues.of(kept, recording);
        possible.put(series.channel(), held);
        intervals.put(series.channel(), Interval.usualMs(held));
      }
    }
    return new PossibleReadings(possible, intervals);
  }

  /** The shortest usual interval of any channel that measures; empty where none does. */
  OptionalLong shortestIntervalMs() {
    return intervalMs.entrySet().stream()
        .filter(one -> one.getKey().quantity() != Quantity.STATE)
        .mapToLong(Map.Entry::getValue)
        .min();
  }

  /** SI values of each channel on a grid of instants. */
  Map<Channel, double[]> onGrid(long startMs, long stepMs, int size) {
    Map<Channel, double[]> values = new EnumMap<>(Channel.class);
    series.forEach(
        (channel, one) ->
            values.put(
                channel, new Gridding(one, intervalMs.get(channel), startMs, stepMs, size).grid()));
    return values;
  }
}
