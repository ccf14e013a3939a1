package heatwake.analysis.zero;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Scatter;
import java.util.List;

/**
 * Brings the entering water's readings to the time at which the same water leaves: what passes the
 * inlet clip reaches the outlet clip after the transit through the exchanger, and the two clips lag
 * differently. The delay is found where it shows by itself, in changes of the entering water while
 * the compressor rests, by the shift that makes both readings move together best; it is applied
 * only if these changes stand clear of the noise and the shift takes most of the mismatch away. In
 * steady running a shift changes nothing. Limits are ours.
 */
public final class Alignment {
  private static final double LONGEST_S = 120;
  private static final double CHANGE_OVER_S = 30;
  private static final double CHANGE_IN_NOISES = 5;
  private static final double LEAST_CHANGE_K = 0.1;
  private static final int FEWEST = 20;

  /** Share of the mismatch of changes that may be left after the shift. */
  private static final double MOST_LEFT = 0.5;

  private Alignment() {}

  /** The timeline with {@code water-in} shifted, or the same timeline where nothing shows. */
  public static Timeline of(Timeline timeline, List<PhaseSpan> phases) {
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return timeline;
    }
    int delay = delayInstants(timeline, phases);
    return delay == 0 ? timeline : timeline.delayed(Channel.WATER_IN, delay);
  }

  static int delayInstants(Timeline timeline, List<PhaseSpan> phases) {
    int longest = (int) (LONGEST_S / timeline.stepS());
    int over = Math.max(1, (int) (CHANGE_OVER_S / timeline.stepS()));
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    double noise =
        Math.max(
            Scatter.noise(in, timeline.intervalInstants(Channel.WATER_IN)),
            Scatter.noise(out, timeline.intervalInstants(Channel.WATER_OUT)));
    double least = Math.max(LEAST_CHANGE_K, CHANGE_IN_NOISES * noise);
    double[] mismatch = new double[longest + 1];
    int changes = 0;
    for (PhaseSpan span : phases) {
      if (span.phase() == Phase.CIRCULATING) {
        int from = timeline.firstAtOrAfter(span.startMs()) + over;
        int to = timeline.firstAtOrAfter(span.endMs()) - longest;
        for (int i = from; i < to; i++) {
          double change = in[i] - in[i - over];
          if (Math.abs(change) >= least && known(out, i - over, i + longest)) {
            changes++;
            for (int lag = 0; lag <= longest; lag++) {
              double other = out[i + lag] - out[i + lag - over];
              mismatch[lag] += (other - change) * (other - change);
            }
          }
        }
      }
    }
    int best = 0;
    for (int lag = 1; lag <= longest; lag++) {
      if (mismatch[lag] < mismatch[best]) {
        best = lag;
      }
    }
    boolean clear = changes >= FEWEST && mismatch[best] < MOST_LEFT * mismatch[0];
    return clear ? best : 0;
  }

  private static boolean known(double[] values, int from, int to) {
    return !Double.isNaN(values[from]) && !Double.isNaN(values[to]);
  }
}
