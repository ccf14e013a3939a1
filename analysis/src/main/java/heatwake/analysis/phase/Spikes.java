package heatwake.analysis.phase;

/**
 * Draws that stand far above what is held around them, for no longer than a motor takes to trip
 * that does not turn: tries of a compressor and inrush. They say nothing of the level at which it
 * runs.
 */
final class Spikes {
  /** So many times what is held (ours; a motor that does not turn: four times and more). */
  private static final double ABOVE = 1.5;

  private final double[] values;
  private final int shortest;

  private Spikes(double[] values, int shortest) {
    this.values = values;
    this.shortest = shortest;
  }

  /**
   * The values without their spikes, NaN in their place.
   *
   * @param shortest instants for which a level is held at least
   */
  static double[] takenFrom(double[] values, int shortest) {
    return values.length < shortest ? values : new Spikes(values, shortest).taken();
  }

  private double[] taken() {
    double[] lowest = new double[values.length - shortest + 1];
    for (int i = 0; i < lowest.length; i++) {
      lowest[i] = lowest(i, i + shortest);
    }
    double[] kept = values.clone();
    for (int i = 0; i < kept.length; i++) {
      if (isAbove(values[i], lowest, i)) {
        kept[i] = Double.NaN;
      }
    }
    return kept;
  }

  private double lowest(int from, int to) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = from; i < to; i++) {
      if (values[i] < lowest) {
        lowest = values[i];
      }
    }
    return lowest;
  }

  /** Whether a value stands above every level held for long enough over a time that holds it. */
  private boolean isAbove(double value, double[] lowest, int i) {
    int last = Math.min(i, lowest.length - 1);
    for (int k = Math.max(0, i - shortest + 1); k <= last; k++) {
      if (value <= ABOVE * lowest[k]) {
        return false;
      }
    }
    return value > 0;
  }
}
