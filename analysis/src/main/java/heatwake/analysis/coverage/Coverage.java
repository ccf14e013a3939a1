package heatwake.analysis.coverage;

import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumMap;
import java.util.Map;

/** Counts readings and the share of the run that they cover. */
public final class Coverage {
  private Coverage() {}

  /**
   * Coverage of every channel that has readings. A stretch between two readings counts when it is
   * no longer than {@value Timeline#GAP_INTERVALS} usual intervals; the ends of the run count up to
   * one usual interval from the nearest reading.
   */
  public static Map<Channel, ChannelCoverage> of(Recording recording) {
    Map<Channel, ChannelCoverage> found = new EnumMap<>(Channel.class);
    recording.series().forEach((channel, series) -> found.put(channel, of(recording, series)));
    return found;
  }

  private static ChannelCoverage of(Recording recording, Series series) {
    long intervalMs = Timeline.usualIntervalMs(series);
    long longestMs = Timeline.GAP_INTERVALS * intervalMs;
    long runMs = recording.endMs() - recording.startMs();
    long firstMs = series.timeMs(0);
    long lastMs = series.timeMs(series.size() - 1);
    long coveredMs = Math.min(intervalMs, Math.max(0, firstMs - recording.startMs()));
    coveredMs += Math.min(intervalMs, Math.max(0, recording.endMs() - lastMs));
    for (int r = 1; r < series.size(); r++) {
      long gapMs = series.timeMs(r) - series.timeMs(r - 1);
      if (gapMs <= longestMs) {
        coveredMs += gapMs;
      }
    }
    double coverage = runMs <= 0 ? 1 : Math.min(1, (double) coveredMs / runMs);
    return new ChannelCoverage(series.size(), coverage, intervalMs / 1e3);
  }
}
