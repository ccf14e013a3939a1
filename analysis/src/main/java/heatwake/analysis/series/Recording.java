package heatwake.analysis.series;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One run as it was recorded (or as far as it has been): everything the analysis works from.
 *
 * @param run number of the run in its store
 * @param rig the site as clipped
 * @param startMs first moment of the run, UTC milliseconds
 * @param endMs last moment of the run so far
 * @param series readings by channel; a channel without readings is absent
 * @param events what happened to the recording, in order of start
 * @param notes what the person typed, in order of time
 * @param leftOut readings that take no part, because their stamps cannot be right
 */
public record Recording(
    long run,
    Rig rig,
    long startMs,
    long endMs,
    Map<Channel, Series> series,
    List<RunEvent> events,
    List<Note> notes,
    List<StampsLeftOut> leftOut) {

  public Recording {
    Map<Channel, Series> copy = new EnumMap<>(Channel.class);
    series.forEach(
        (channel, one) -> {
          if (!one.isEmpty()) {
            copy.put(channel, one);
          }
        });
    series = Collections.unmodifiableMap(copy);
    events = List.copyOf(events);
    notes = List.copyOf(notes);
    leftOut = List.copyOf(leftOut);
  }

  /** A run whose readings all take part. */
  public Recording(
      long run,
      Rig rig,
      long startMs,
      long endMs,
      Map<Channel, Series> series,
      List<RunEvent> events,
      List<Note> notes) {
    this(run, rig, startMs, endMs, series, events, notes, List.of());
  }

  /** The same run with other readings. */
  public Recording with(Map<Channel, Series> other) {
    return new Recording(run, rig, startMs, endMs, other, events, notes, leftOut);
  }

  /** The readings of a channel, if there are any. */
  public Optional<Series> of(Channel channel) {
    return Optional.ofNullable(series.get(channel));
  }
}
