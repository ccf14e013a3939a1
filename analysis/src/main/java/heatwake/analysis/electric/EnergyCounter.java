package heatwake.analysis.electric;

import heatwake.analysis.series.Series;
import java.util.Arrays;

/**
 * A running total of energy made to run on: roll-over and reset of the meter are taken out, a
 * reading that falls back and recovers is dropped.
 *
 * <p>A fall is a roll-over when the register stood near a power of ten of kWh and the energy that
 * this implies is no more than the heater could have taken since; otherwise it is a reset and the
 * meter began again from zero.
 */
final class EnergyCounter {
  private static final double J_PER_KWH = 3.6e6;

  /** No pool heater takes more; ours. */
  private static final double MOST_W = 100e3;

  /** A falling reading that is made good within this many readings was a glitch; ours. */
  private static final int GLITCH_READINGS = 3;

  private final long[] timesMs;
  private final double[] totalJ;
  private final int size;

  private EnergyCounter(long[] timesMs, double[] totalJ, int size) {
    this.timesMs = timesMs;
    this.totalJ = totalJ;
    this.size = size;
  }

  static EnergyCounter of(Series series) {
    long[] times = new long[series.size()];
    double[] total = new double[series.size()];
    int n = 0;
    double offset = 0;
    double last = Double.NaN;
    for (int r = 0; r < series.size(); r++) {
      double value = series.value(r);
      if (value < last) {
        if (isGlitch(series, r, last)) {
          continue;
        }
        double elapsedS = (series.timeMs(r) - times[n - 1]) / 1e3;
        offset += last + rolledOverJ(last, value, elapsedS);
      }
      times[n] = series.timeMs(r);
      total[n++] = offset + value;
      last = value;
    }
    return new EnergyCounter(times, total, n);
  }

  private static boolean isGlitch(Series series, int r, double last) {
    int end = Math.min(series.size(), r + 1 + GLITCH_READINGS);
    for (int k = r + 1; k < end; k++) {
      double most = last + MOST_W * (series.timeMs(k) - series.timeMs(r - 1)) / 1e3;
      if (series.value(k) >= last && series.value(k) <= most) {
        return true;
      }
    }
    return false;
  }

  /** What the register still counted before it showed zero again; zero for a reset. */
  private static double rolledOverJ(double lastJ, double nowJ, double elapsedS) {
    double fullJ = Math.pow(10, Math.ceil(Math.log10(lastJ / J_PER_KWH))) * J_PER_KWH;
    double impliedJ = fullJ - lastJ + nowJ;
    return impliedJ <= MOST_W * elapsedS && lastJ > 0.9 * fullJ ? fullJ - lastJ : 0;
  }

  /**
   * Mean power from each instant of an even grid to the next; NaN before the first and after the
   * last reading. A gap between readings is no gap in the energy: the counter went on.
   */
  double[] powerW(long startMs, long stepMs, int instants) {
    double[] power = new double[instants];
    Arrays.fill(power, Double.NaN);
    int r = 0;
    double before = Double.NaN;
    for (int i = 0; i <= instants; i++) {
      long at = startMs + i * stepMs;
      while (r + 1 < size && timesMs[r + 1] <= at) {
        r++;
      }
      double now = Double.NaN;
      if (size > 0 && timesMs[r] <= at) {
        if (timesMs[r] == at) {
          now = totalJ[r];
        } else if (r + 1 < size) {
          double share = (double) (at - timesMs[r]) / (timesMs[r + 1] - timesMs[r]);
          now = totalJ[r] + share * (totalJ[r + 1] - totalJ[r]);
        }
      }
      if (i > 0) {
        power[i - 1] = (now - before) / (stepMs / 1e3);
      }
      before = now;
    }
    return power;
  }

  /**
   * Standard uncertainty of the total at a moment between readings: the step by which the register
   * moves when it moves (its resolution, or what is used between two seldom readings), rectangular.
   */
  double edgeJ() {
    double[] steps = new double[size];
    int n = 0;
    for (int r = 1; r < size; r++) {
      double step = totalJ[r] - totalJ[r - 1];
      if (step > 0) {
        steps[n++] = step;
      }
    }
    if (n == 0) {
      return 0;
    }
    Arrays.sort(steps, 0, n);
    return steps[n / 2] / Math.sqrt(12);
  }

  /** Readings that were kept. */
  int size() {
    return size;
  }

  /** Energy from the first to the last reading. */
  double usedJ() {
    return size == 0 ? 0 : totalJ[size - 1] - totalJ[0];
  }
}
