package heatwake.analysis.electric;

import heatwake.analysis.series.Series;
import java.util.Arrays;
import java.util.BitSet;

/**
 * A running total of energy made to run on: roll-over, reset and replacement of the meter are taken
 * out, a reading that leaps away and comes back is dropped.
 *
 * <p>A fall is a roll-over when the register stood near its end (a power of ten of kWh, or 2^16 or
 * 2^32 of its steps) and the energy that this implies is no more than the heater could have taken
 * since. Otherwise the meter began again: from zero if what it shows can have been taken since,
 * else it is another meter, and what was taken meanwhile is not known. A leap upward that no heater
 * can have taken is another meter, too.
 */
final class EnergyCounter {
  private static final double J_PER_KWH = 3.6e6;

  /** No pool heater takes more; ours. */
  private static final double MOST_W = 100e3;

  /** A leap that is made good within this many readings was a glitch; ours. */
  private static final int GLITCH_READINGS = 3;

  /** A register stands near its end from this share of it on; ours. */
  private static final double NEAR_END = 0.9;

  private final long[] timesMs;
  private final double[] totalJ;
  private final BitSet anew;
  private final double stepJ;
  private final int size;

  private EnergyCounter(long[] timesMs, double[] totalJ, BitSet anew, double stepJ, int size) {
    this.timesMs = timesMs;
    this.totalJ = totalJ;
    this.anew = anew;
    this.stepJ = stepJ;
    this.size = size;
  }

  static EnergyCounter of(Series series) {
    long[] times = new long[series.size()];
    double[] total = new double[series.size()];
    BitSet anew = new BitSet();
    double stepJ = RegisterStep.of(series);
    int n = 0;
    double offset = 0;
    double last = Double.NaN;
    for (int r = 0; r < series.size(); r++) {
      double value = series.value(r);
      double mostJ = n == 0 ? 0 : mostJ(series.timeMs(r) - times[n - 1], stepJ);
      if (n > 0 && (value < last || value - last > mostJ)) {
        if (isGlitch(series, r, last, stepJ)) {
          continue;
        }
        double countedJ = value < last ? rolledOverJ(last, value, mostJ, stepJ) : 0;
        if (countedJ == 0) {
          anew.set(n);
          countedJ = value < last && value <= mostJ ? value : 0;
        }
        offset = total[n - 1] + countedJ - value;
      }
      times[n] = series.timeMs(r);
      total[n++] = offset + value;
      last = value;
    }
    return new EnergyCounter(times, total, anew, stepJ, n);
  }

  /** More than this no heater takes in a time, as a register shows it. */
  private static double mostJ(long elapsedMs, double stepJ) {
    return MOST_W * elapsedMs / 1e3 + stepJ;
  }

  private static boolean isGlitch(Series series, int r, double last, double stepJ) {
    int end = Math.min(series.size(), r + 1 + GLITCH_READINGS);
    for (int k = r + 1; k < end; k++) {
      double most = last + mostJ(series.timeMs(k) - series.timeMs(r - 1), stepJ);
      if (series.value(k) >= last && series.value(k) <= most) {
        return true;
      }
    }
    return false;
  }

  /** What a register that ran over its end counted since the last reading; zero if it did not. */
  private static double rolledOverJ(double lastJ, double nowJ, double mostJ, double stepJ) {
    double tenJ = Math.pow(10, Math.ceil(Math.log10(lastJ / J_PER_KWH))) * J_PER_KWH;
    for (double fullJ : new double[] {tenJ, 0x1p16 * stepJ, 0x1p32 * stepJ}) {
      double impliedJ = fullJ - lastJ + nowJ;
      if (lastJ < fullJ && lastJ > NEAR_END * fullJ && impliedJ <= mostJ) {
        return impliedJ;
      }
    }
    return 0;
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

  long timeMs(int r) {
    return timesMs[r];
  }

  /** Running total at a reading. */
  double totalJ(int r) {
    return totalJ[r];
  }

  /** Whether the meter began again before a reading: what it took meanwhile is not known. */
  boolean beginsAnew(int r) {
    return anew.get(r);
  }

  /** Step of the register. */
  double stepJ() {
    return stepJ;
  }

  /** Energy from the first to the last reading. */
  double usedJ() {
    return size == 0 ? 0 : totalJ[size - 1] - totalJ[0];
  }
}
