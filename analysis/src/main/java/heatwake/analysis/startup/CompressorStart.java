package heatwake.analysis.startup;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The first compressor start that lies within the readings.
 *
 * @param startMs when it started, UTC milliseconds
 * @param stopMs when it stopped, or the end of the run
 * @param fanMs when the fan started alone before it; empty if it did not show
 */
record CompressorStart(long startMs, long stopMs, OptionalLong fanMs) {

  static Optional<CompressorStart> first(Evidence evidence) {
    return evidence.cycles().stream()
        .filter(Cycle::startSeen)
        .findFirst()
        .map(
            cycle ->
                new CompressorStart(
                    cycle.startMs(),
                    cycle.stopMs().orElse(evidence.recording().endMs()),
                    fanBefore(evidence, cycle.startMs())));
  }

  private static OptionalLong fanBefore(Evidence evidence, long startMs) {
    for (PhaseSpan span : evidence.phases()) {
      if (span.phase() == Phase.FAN && span.endMs() == startMs) {
        return OptionalLong.of(span.startMs());
      }
    }
    return OptionalLong.empty();
  }

  /** Whether any channel shows a compressor. */
  static boolean canBeSeen(Timeline timeline) {
    return timeline.has(Channel.POWER)
        || timeline.has(Channel.CURRENT)
        || timeline.has(Channel.PRESSURE_DISCHARGE)
        || (timeline.has(Channel.WATER_IN) && timeline.has(Channel.WATER_OUT));
  }

  double ranS() {
    return (stopMs - startMs) / 1e3;
  }
}
