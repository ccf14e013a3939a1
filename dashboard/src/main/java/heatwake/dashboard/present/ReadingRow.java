package heatwake.dashboard.present;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.List;

/**
 * The last reading of a channel.
 *
 * @param channel which channel
 * @param value the number, or on and off
 * @param unit its unit, empty for a state
 * @param age how old it is, in words
 * @param stale whether it no longer speaks for now
 * @param possible whether it can be true of its channel at all
 */
public record ReadingRow(
    Channel channel, String value, String unit, String age, boolean stale, boolean possible) {

  /** The last reading of every channel recorded, in the channels' usual order. */
  public static List<ReadingRow> of(Recording recording, long nowMs, UnitChoice units) {
    return recording.series().values().stream().map(one -> of(one, nowMs, units)).toList();
  }

  /** The last reading of every channel of a run that is over. */
  public static List<ReadingRow> atEnd(Recording recording, UnitChoice units) {
    return recording.series().values().stream()
        .map(one -> of(one, recording.endMs(), units).atEnd(one, recording.endMs()))
        .toList();
  }

  private ReadingRow atEnd(Series series, long endMs) {
    String before = Moment.duration(Staleness.ageMs(series, endMs)) + " before the end";
    return new ReadingRow(channel, value, unit, stale ? before : "at the end", stale, possible);
  }

  static ReadingRow of(Series series, long nowMs, UnitChoice units) {
    Channel channel = series.channel();
    DisplayUnit unit = units.of(channel);
    double si = series.value(series.size() - 1);
    boolean possible = channel.isPossible(channel.storedUnit().fromSi(si));
    String value =
        channel.quantity() == Quantity.STATE ? (si > 0.5 ? "on" : "off") : unit.number(si);
    return new ReadingRow(
        channel,
        value,
        unit.symbol(),
        Moment.duration(Staleness.ageMs(series, nowMs)) + " old",
        Staleness.isStale(series, nowMs),
        possible);
  }

  /** The channel's name for a heading. */
  public String title() {
    return Names.sentenceCase(Names.of(channel));
  }

  public Tone tone() {
    return stale ? Tone.STALE : possible ? Tone.PLAIN : Tone.WARNING;
  }
}
