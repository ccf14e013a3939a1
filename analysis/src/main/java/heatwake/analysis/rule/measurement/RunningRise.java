package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * The rise of the water over the running of a whole recording.
 *
 * @param meanK its mean, by the zero of the pair where there is one, K
 * @param negativeShare share of the time in which it is below zero
 * @param seconds time of running in which it is read
 * @param span from the first instant of it to behind the last
 * @param airMeanK mean by which the air leaves warmer than it enters meanwhile, K; NaN if not read
 */
record RunningRise(
    double meanK, double negativeShare, double seconds, Stretch span, double airMeanK) {

  /** Of the instants that count as running; empty if none of them has a rise. */
  static Optional<RunningRise> in(Evidence evidence, boolean[] runs) {
    Timeline timeline = evidence.timeline();
    double zeroK = evidence.zero().map(zero -> zero.offsetK().value()).orElse(0.0);
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    double[] airIn = timeline.of(Channel.AIR_IN);
    double[] airOut = timeline.of(Channel.AIR_OUT);
    double sum = 0;
    double air = 0;
    int airCount = 0;
    int count = 0;
    int negative = 0;
    int first = -1;
    int last = -1;
    for (int i = 0; i < runs.length; i++) {
      double rise = out[i] - in[i] - zeroK;
      if (!runs[i] || Double.isNaN(rise)) {
        continue;
      }
      first = first < 0 ? i : first;
      last = i;
      sum += rise;
      count++;
      negative += rise < 0 ? 1 : 0;
      double airRise = airOut[i] - airIn[i];
      if (!Double.isNaN(airRise)) {
        air += airRise;
        airCount++;
      }
    }
    return count == 0
        ? Optional.empty()
        : Optional.of(
            new RunningRise(
                sum / count,
                (double) negative / count,
                count * timeline.stepS(),
                new Stretch(first, last + 1),
                airCount == 0 ? Double.NaN : air / airCount));
  }
}
