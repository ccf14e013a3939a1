package heatwake.analysis.rule.control;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;

/**
 * A rest of the compressor that is shorter than it should be.
 *
 * @param stopMs the stop before it
 * @param startMs the start after it
 */
record ShortRest(long stopMs, long startMs) {
  /** Some heaters rest the compressor shortly to turn a defrost on or off; common practice. */
  static final long BESIDE_DEFROST_MS = 180_000;

  double lengthS() {
    return (startMs - stopMs) / 1e3;
  }

  /**
   * Seen from end to end, and not beside a defrost. Where the phase is not known it may be only the
   * water that is not: what shows the compressor has to read.
   */
  boolean isSeen(Evidence evidence) {
    for (PhaseSpan span : evidence.phases()) {
      boolean within = span.endMs() > stopMs && span.startMs() < startMs;
      boolean beside =
          span.endMs() >= stopMs - BESIDE_DEFROST_MS
              && span.startMs() <= startMs + BESIDE_DEFROST_MS;
      if ((beside && span.phase() == Phase.DEFROST)
          || (within && span.phase() == Phase.UNKNOWN && isSilent(span, evidence.timeline()))) {
        return false;
      }
    }
    return true;
  }

  /** Whether nothing tells of the compressor for more than an instant of a span. */
  private boolean isSilent(PhaseSpan span, Timeline timeline) {
    int to = timeline.firstAtOrAfter(Math.min(startMs, span.endMs()));
    int silent = 0;
    for (int i = timeline.firstAtOrAfter(Math.max(stopMs, span.startMs())); i < to; i++) {
      silent += CompressorSight.reads(timeline, i) ? 0 : 1;
    }
    return silent > 1;
  }
}
