package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * Whether water moves through the heater, from every channel that can tell. Each channel votes; one
 * that measures the heater's own water counts more than one that only says the pump is switched on.
 */
final class WaterMovement {
  /** Water moves from this share of the usual flow upwards (ours: pump run-down ends below it). */
  private static final double MOVING_SHARE = 0.2;

  /** Hysteresis: it stands below this share (ours). */
  private static final double STANDING_SHARE = 0.12;

  /** Any flow under 3 L/min is a flow meter's zero, not a pool pump (ours). */
  private static final double LEAST_FLOW_M3_PER_S = 3e-3 / 60;

  /**
   * A filter inlet under 15 kPa gauge belongs to a pump at rest (common practice: 50 to 150 run).
   */
  private static final double LEAST_FILTER_PRESSURE_PA = 15e3;

  private WaterMovement() {}

  static Track of(Timeline timeline, Recording recording) {
    int size = timeline.size();
    int[] votes = new int[size];
    vote(votes, flow(timeline, Channel.FLOW_HEATER), 4);
    vote(votes, flow(timeline, Channel.FLOW_TOTAL), 2);
    vote(votes, state(timeline, recording, Channel.FLOW_SWITCH), 2);
    vote(votes, state(timeline, recording, Channel.PUMP_ON), 1);
    vote(votes, filterPressure(timeline), 1);
    Track moving = new Track(size);
    for (int i = 0; i < size; i++) {
      moving.set(i, (byte) Integer.signum(votes[i]));
    }
    return moving;
  }

  private static void vote(int[] votes, Optional<Track> track, int weight) {
    track.ifPresent(
        said -> {
          for (int i = 0; i < votes.length; i++) {
            votes[i] += weight * said.at(i);
          }
        });
  }

  private static Optional<Track> flow(Timeline timeline, Channel channel) {
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    double[] flow = timeline.of(channel);
    double usual = LevelHistogram.of(flow).quantile(0.9);
    double on = Math.max(LEAST_FLOW_M3_PER_S, MOVING_SHARE * usual);
    double off = Math.max(LEAST_FLOW_M3_PER_S * 0.8, STANDING_SHARE * usual);
    return Optional.of(Track.above(flow, on, off));
  }

  private static Optional<Track> filterPressure(Timeline timeline) {
    if (!timeline.has(Channel.PRESSURE_FILTER)) {
      return Optional.empty();
    }
    double[] pressure = timeline.of(Channel.PRESSURE_FILTER);
    double usual = LevelHistogram.of(pressure).quantile(0.9);
    double on = Math.max(LEAST_FILTER_PRESSURE_PA, 0.4 * usual);
    return Optional.of(Track.above(pressure, on, 0.75 * on));
  }

  /** A state; one that is only sent when it changes holds until it is sent again. */
  private static Optional<Track> state(Timeline timeline, Recording recording, Channel channel) {
    Optional<Series> found = recording.of(channel);
    if (found.isEmpty() || !timeline.has(channel)) {
      return Optional.empty();
    }
    Series series = found.get();
    if (!isSentOnChange(series)) {
      return Optional.of(Track.above(timeline.of(channel), 0.5, 0.5));
    }
    Track track = new Track(timeline.size());
    for (int r = 0; r < series.size(); r++) {
      int from = firstInstantAtOrAfter(timeline, series.timeMs(r));
      int to =
          r + 1 < series.size()
              ? firstInstantAtOrAfter(timeline, series.timeMs(r + 1))
              : timeline.size();
      if (from < to) {
        track.fill(from, to, series.value(r) >= 0.5 ? Track.YES : Track.NO);
      }
    }
    return Optional.of(track);
  }

  private static boolean isSentOnChange(Series series) {
    int changes = 0;
    for (int r = 1; r < series.size(); r++) {
      if ((series.value(r) >= 0.5) != (series.value(r - 1) >= 0.5)) {
        changes++;
      }
    }
    return changes >= 0.8 * (series.size() - 1);
  }

  private static int firstInstantAtOrAfter(Timeline timeline, long timeMs) {
    long index = -Math.floorDiv(timeline.startMs() - timeMs, timeline.stepMs());
    return (int) Math.max(0, Math.min(timeline.size(), index));
  }
}
