package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** Joins phases to compressor cycles. */
final class CycleFinder {
  /**
   * A silence shorter than this hides no stop and restart (shortest restart delay, common
   * practice).
   */
  private static final long HIDES_NOTHING_MS = 180_000;

  private final List<PhaseSpan> spans;
  private final Timeline timeline;
  private final Track restSeen;

  private CycleFinder(List<PhaseSpan> spans, Timeline timeline, Track restSeen) {
    this.spans = spans;
    this.timeline = timeline;
    this.restSeen = restSeen;
  }

  /**
   * @param restSeen where the compressor is seen to rest, though it may not be known whether water
   *     moves
   */
  static List<Cycle> of(List<PhaseSpan> spans, Timeline timeline, Track restSeen) {
    return new CycleFinder(spans, timeline, restSeen).find();
  }

  private List<Cycle> find() {
    List<long[]> runs = new ArrayList<>(); // start, stop or -1, whether the start was seen
    boolean running = false;
    boolean canSeeStart = false;
    for (int k = 0; k < spans.size(); k++) {
      PhaseSpan span = spans.get(k);
      if (span.phase().compressorRuns()) {
        if (!running) {
          runs.add(new long[] {span.startMs(), -1, canSeeStart ? 1 : 0});
        }
        running = true;
      } else if (running && !isShortSilenceWithin(k)) {
        runs.get(runs.size() - 1)[1] = span.startMs();
        running = false;
      }
      canSeeStart = span.phase() != Phase.UNKNOWN || endsAtRest(span);
    }
    List<Cycle> cycles = new ArrayList<>();
    for (int k = 0; k < runs.size(); k++) {
      long[] run = runs.get(k);
      cycles.add(
          new Cycle(
              run[0],
              run[1] < 0 ? OptionalLong.empty() : OptionalLong.of(run[1]),
              k + 1 < runs.size() ? OptionalLong.of(runs.get(k + 1)[0]) : OptionalLong.empty(),
              run[2] == 1));
    }
    return cycles;
  }

  private boolean isShortSilenceWithin(int k) {
    PhaseSpan span = spans.get(k);
    return span.phase() == Phase.UNKNOWN
        && span.endMs() - span.startMs() < HIDES_NOTHING_MS
        && k + 1 < spans.size()
        && spans.get(k + 1).phase().compressorRuns()
        && !endsAtRest(span);
  }

  private boolean endsAtRest(PhaseSpan span) {
    return restSeen.yes(timeline.indexAt(span.endMs() - 1));
  }
}
