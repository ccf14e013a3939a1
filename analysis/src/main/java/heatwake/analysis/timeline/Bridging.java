package heatwake.analysis.timeline;

import java.util.BitSet;

/**
 * Fills short silences of a quantity that is to be summed: a straight line from the last value to
 * the next. Long silences stay NaN.
 */
public final class Bridging {
  /** Longest silence that is bridged; ours: a heater seldom stops and starts again within it. */
  public static final long LONGEST_MS = 600_000;

  /** Standard uncertainty of what is bridged, as a share of it; ours. */
  public static final double SHARE = 0.1;

  private final double[] values;
  private final BitSet bridged;

  private Bridging(double[] values, BitSet bridged) {
    this.values = values;
    this.bridged = bridged;
  }

  /** Bridges the short silences of values on a timeline; the array handed in stays as it is. */
  public static Bridging of(Timeline timeline, double[] values) {
    double[] filled = values.clone();
    BitSet bridged = new BitSet(values.length);
    int longest = (int) (LONGEST_MS / timeline.stepMs());
    int last = -1;
    for (int i = 0; i < filled.length; i++) {
      if (!Double.isNaN(values[i])) {
        int gap = i - last - 1;
        if (gap > 0 && last >= 0 && gap <= longest) {
          double step = (values[i] - values[last]) / (gap + 1);
          for (int k = last + 1; k < i; k++) {
            filled[k] = values[last] + step * (k - last);
          }
          bridged.set(last + 1, i);
        }
        last = i;
      }
    }
    return new Bridging(filled, bridged);
  }

  /** Values with short silences bridged. Shared, not to be written to. */
  public double[] values() {
    return values;
  }

  /** Whether instant {@code i} is bridged rather than measured. */
  public boolean isBridged(int i) {
    return bridged.get(i);
  }
}
