package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import java.util.Optional;

/**
 * The high side beyond a limit: either for long enough, or each time up to the instant at which the
 * compressor stops. A pressure switch ends the second kind within seconds of the limit, so that no
 * length can be asked of it; that it comes again tells it from a spike.
 *
 * @param highestPa greatest pressure, gauge
 * @param stops how many times the compressor stopped at it; zero if it was held for long enough
 */
record HighSidePeak(long startMs, long endMs, double highestPa, int stops) {
  /** A peak shorter than this is a start or a spike; ours. */
  private static final double SHORTEST_S = 60;

  /** A stop belongs to what the pressure was this long before it; ours. */
  private static final long BEFORE_STOP_MS = 60_000;

  /** A stop is seen in the power up to this much before the pressure's greatest reading; ours. */
  private static final long AFTER_STOP_MS = 10_000;

  /** One stop at a peak may be chance; ours. */
  private static final int FEWEST_STOPS = 2;

  /**
   * The peak above a limit, if there is one.
   *
   * @param limitPa limit of the discharge pressure, gauge
   * @param uncertaintyPa standard uncertainty of the probe there
   */
  static Optional<HighSidePeak> above(Evidence evidence, double limitPa, double uncertaintyPa) {
    double[] pressure = evidence.timeline().of(Channel.PRESSURE_DISCHARGE);
    double surelyPa = limitPa + Doubt.FACTOR * uncertaintyPa;
    Optional<HighSidePeak> held = held(evidence, pressure, surelyPa);
    return held.isPresent() ? held : atStops(evidence, pressure, surelyPa);
  }

  private static Optional<HighSidePeak> held(Evidence evidence, double[] values, double limit) {
    Timeline timeline = evidence.timeline();
    int shortest = (int) Math.max(2, Math.ceil(SHORTEST_S / timeline.stepS()));
    int first = -1;
    int last = -1;
    double highest = Double.NEGATIVE_INFINITY;
    int length = 0;
    for (int i = 0; i < values.length; i++) {
      length = values[i] > limit ? length + 1 : 0;
      if (length >= shortest) {
        first = first < 0 ? i - length + 1 : first;
        last = i;
        highest = Math.max(highest, values[i]);
      }
    }
    return first < 0
        ? Optional.empty()
        : Optional.of(new HighSidePeak(timeline.timeMs(first), timeline.timeMs(last), highest, 0));
  }

  private static Optional<HighSidePeak> atStops(Evidence evidence, double[] values, double limit) {
    Timeline timeline = evidence.timeline();
    long startMs = 0;
    long endMs = 0;
    double highest = Double.NEGATIVE_INFINITY;
    int stops = 0;
    for (Cycle cycle : evidence.cycles()) {
      if (cycle.stopMs().isEmpty()) {
        continue;
      }
      long stopMs = cycle.stopMs().getAsLong();
      int from = timeline.firstAtOrAfter(Math.max(cycle.startMs(), stopMs - BEFORE_STOP_MS));
      int to = timeline.firstAtOrAfter(stopMs + AFTER_STOP_MS + 1);
      double atStop = greatest(values, from, to);
      double earlier = greatest(values, timeline.firstAtOrAfter(cycle.startMs()), from);
      if (atStop > limit && !(earlier > atStop)) {
        startMs = stops == 0 ? cycle.startMs() : startMs;
        endMs = stopMs;
        highest = Math.max(highest, atStop);
        stops++;
      }
    }
    return stops < FEWEST_STOPS
        ? Optional.empty()
        : Optional.of(new HighSidePeak(startMs, endMs, highest, stops));
  }

  private static double greatest(double[] values, int from, int to) {
    double greatest = Double.NaN;
    for (int i = Math.max(0, from); i < Math.min(values.length, to); i++) {
      if (!Double.isNaN(values[i]) && !(values[i] <= greatest)) {
        greatest = values[i];
      }
    }
    return greatest;
  }
}
