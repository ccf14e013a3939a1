package heatwake.collector.soak;

import heatwake.analysis.quantity.Channel;
import java.util.BitSet;

/**
 * Readings of a probe whose clock is wrong: known by their value, as the recorder has to give them
 * another time.
 */
final class Strays {
  static final Channel CHANNEL = Channel.AIR_IN;
  private static final int STEPS_PER_KELVIN = 1024;

  private final BitSet owed = new BitSet();
  private final BitSet stored = new BitSet();
  private int sent;
  private int again;
  private int altered;

  synchronized int next() {
    return sent++;
  }

  synchronized void owe(int number) {
    owed.set(number);
  }

  static double value(int number) {
    return 1 + number / (double) STEPS_PER_KELVIN;
  }

  synchronized void recount() {
    stored.clear();
    again = 0;
    altered = 0;
  }

  synchronized void found(double value) {
    double number = (value - 1) * STEPS_PER_KELVIN;
    if (number != Math.rint(number) || number < 0 || number >= sent) {
      altered++;
    } else if (stored.get((int) number)) {
      again++;
    } else {
      stored.set((int) number);
    }
  }

  synchronized int lost() {
    BitSet missing = (BitSet) owed.clone();
    missing.andNot(stored);
    return missing.cardinality();
  }

  int altered() {
    return altered;
  }

  @Override
  public synchronized String toString() {
    return String.format(
        "%-14s sent %6d  owed %6d  stored %6d  lost %d  altered %d  (without a time of their own;"
            + " again after a kill: %d)",
        CHANNEL, sent, owed.cardinality(), stored.cardinality(), lost(), altered, again);
  }
}
