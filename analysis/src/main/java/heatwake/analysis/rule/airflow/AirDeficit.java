package heatwake.analysis.rule.airflow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Scatter;
import java.util.Optional;

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

  /**
   * Over all settled instants; empty where there are too few.
   *
   * @param shortestS least time that makes a mean
   */
  static Optional<AirDeficit> of(Timeline timeline, SettledInstants settled, double shortestS) {
    return over(timeline, settled, shortestS, 0, timeline.size());
  }

  /** Over the settled instants from one moment up to another; empty where there are too few. */
  static Optional<AirDeficit> between(
      Timeline timeline, SettledInstants settled, double shortestS, long fromMs, long untilMs) {
    return over(
        timeline,
        settled,
        shortestS,
        timeline.firstAtOrAfter(fromMs),
        timeline.firstAtOrAfter(untilMs));
  }

  private static Optional<AirDeficit> over(
      Timeline timeline, SettledInstants settled, double shortestS, int from, int to) {
    double[] in = timeline.of(Channel.AIR_IN);
    double[] ambient = timeline.of(Channel.AIR_AMBIENT);
    double[] below = new double[Math.max(0, to - from)];
    int count = 0;
    double inletSum = 0;
    long startMs = 0;
    long endMs = 0;
    for (int i = from; i < to; i++) {
      double difference = ambient[i] - in[i];
      if (settled.has(i) && !Double.isNaN(difference)) {
        startMs = count == 0 ? timeline.timeMs(i) : startMs;
        endMs = timeline.timeMs(i);
        below[count++] = difference;
        inletSum += in[i];
      }
    }
    int interval =
        Math.max(
            timeline.intervalInstants(Channel.AIR_IN),
            timeline.intervalInstants(Channel.AIR_AMBIENT));
    return count == 0 || count * timeline.stepS() < shortestS
        ? Optional.empty()
        : Optional.of(
            new AirDeficit(
                startMs,
                endMs,
                count / Math.max(1, interval),
                Scatter.mean(below, 0, count),
                inletSum / count));
  }

  /** Mean of the outdoor air, K. */
  double outdoorK() {
    return inletK + belowK.value();
  }
}
