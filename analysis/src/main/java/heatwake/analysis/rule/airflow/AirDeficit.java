package heatwake.analysis.rule.airflow;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Scatter;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * How far the air at the coil's inlet lies below outdoor air.
 *
 * @param startMs first instant that was looked at
 * @param endMs last instant
 * @param readings of the slower of the two probes
 * @param belowK mean, K
 * @param inletK mean of the inlet, K
 */
record AirDeficit(long startMs, long endMs, int readings, Estimate belowK, double inletK) {
  /** Air at the coil has settled this long after the compressor starts or stops; ours. */
  static final long SETTLING_MS = 600_000;

  /**
   * Over the settled instants of some phases; empty where there are too few.
   *
   * @param wanted the phases
   * @param shortestS least time that makes a mean
   * @param fromMs earliest instant
   * @param untilMs latest instant
   */
  static Optional<AirDeficit> of(
      Evidence evidence, Predicate<Phase> wanted, double shortestS, long fromMs, long untilMs) {
    Timeline timeline = evidence.timeline();
    double[] in = timeline.of(Channel.AIR_IN);
    double[] ambient = timeline.of(Channel.AIR_AMBIENT);
    double[] below = new double[timeline.size()];
    int count = 0;
    double inletSum = 0;
    long startMs = 0;
    long endMs = 0;
    boolean ran = false;
    // Nothing ran before the run that would have to settle.
    long changedMs = Long.MIN_VALUE / 2;
    for (PhaseSpan span : evidence.phases()) {
      boolean runs = span.phase().compressorRuns();
      if (runs != ran) {
        changedMs = span.startMs();
        ran = runs;
      }
      if (!wanted.test(span.phase())) {
        continue;
      }
      int from =
          timeline.firstAtOrAfter(
              Math.max(fromMs, Math.max(span.startMs(), changedMs + SETTLING_MS)));
      int to = Math.min(timeline.size(), timeline.firstAtOrAfter(Math.min(untilMs, span.endMs())));
      for (int i = from; i < to; i++) {
        double difference = ambient[i] - in[i];
        if (!Double.isNaN(difference)) {
          startMs = count == 0 ? timeline.timeMs(i) : startMs;
          endMs = timeline.timeMs(i);
          below[count++] = difference;
          inletSum += in[i];
        }
      }
    }
    int interval =
        Math.max(
            timeline.intervalInstants(Channel.AIR_IN),
            timeline.intervalInstants(Channel.AIR_AMBIENT));
    return count * timeline.stepS() < shortestS
        ? Optional.empty()
        : Optional.of(
            new AirDeficit(
                startMs,
                endMs,
                count / Math.max(1, interval),
                Scatter.mean(below, 0, count),
                inletSum / count));
  }
}
