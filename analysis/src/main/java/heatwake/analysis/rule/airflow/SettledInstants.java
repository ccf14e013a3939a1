package heatwake.analysis.rule.airflow;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.function.Predicate;

/** The instants of some phases at which the air at the coil has settled. */
final class SettledInstants {
  /** Air at the coil has settled this long after the compressor or a defrost turns; ours. */
  static final long SETTLING_MS = 600_000;

  private final Timeline timeline;
  private final boolean[] settled;

  private SettledInstants(Timeline timeline) {
    this.timeline = timeline;
    this.settled = new boolean[timeline.size()];
  }

  /** The settled instants of the wanted phases. */
  static SettledInstants of(Evidence evidence, Predicate<Phase> wanted) {
    SettledInstants found = new SettledInstants(evidence.timeline());
    boolean cooled = false;
    boolean defrosted = false;
    // Nothing ran before the run that would have to settle.
    long changedMs = Long.MIN_VALUE / 2;
    for (PhaseSpan span : evidence.phases()) {
      boolean cools = coolsAir(span.phase());
      boolean defrosts = span.phase() == Phase.DEFROST;
      if (cools != cooled || defrosts != defrosted) {
        changedMs = span.startMs();
        cooled = cools;
        defrosted = defrosts;
      }
      if (wanted.test(span.phase())) {
        found.mark(Math.max(span.startMs(), changedMs + SETTLING_MS), span.endMs());
      }
    }
    return found;
  }

  /** Whether the heater draws air through a cold coil: its fan stands in a defrost. */
  static boolean coolsAir(Phase phase) {
    return phase.compressorRuns() && phase != Phase.DEFROST;
  }

  private void mark(long fromMs, long toMs) {
    int to = timeline.firstAtOrAfter(toMs);
    for (int i = timeline.firstAtOrAfter(fromMs); i < to; i++) {
      settled[i] = true;
    }
  }

  boolean has(int i) {
    return settled[i];
  }

  /** The first settled instant, UTC ms; the end of the run where there is none. */
  long firstMs() {
    int i = 0;
    while (i < settled.length - 1 && !settled[i]) {
      i++;
    }
    return timeline.timeMs(i);
  }

  /** Mean over the settled instants from one moment up to another; NaN where there are none. */
  double mean(double[] values, long fromMs, long toMs) {
    return new Stretch(timeline.firstAtOrAfter(fromMs), timeline.firstAtOrAfter(toMs))
        .mean(values, this::has);
  }
}
