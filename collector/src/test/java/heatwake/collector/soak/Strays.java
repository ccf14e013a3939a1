package heatwake.collector.soak;

import heatwake.analysis.quantity.Channel;

/**
 * Readings of a probe whose clock is wrong: known by their value, as the recorder has to give them
 * another time.
 */
final class Strays {
  static final Channel CHANNEL = Channel.AIR_IN;
  private static final int STEPS_PER_KELVIN = 1024;

  private final Ledger ledger = new Ledger();
  private int again;
  private int altered;

  synchronized int next() {
    return ledger.next();
  }

  synchronized void owe(int number) {
    ledger.owe(number);
  }

  static double value(int number) {
    return 1 + number / (double) STEPS_PER_KELVIN;
  }

  synchronized void recount() {
    ledger.recount();
    again = 0;
    altered = 0;
  }

  synchronized void found(double value) {
    double number = (value - 1) * STEPS_PER_KELVIN;
    if (number != Math.rint(number) || number < 0 || number >= ledger.sent()) {
      altered++;
    } else if (!ledger.find((int) number)) {
      again++;
    }
  }

  synchronized int lost() {
    return ledger.lost();
  }

  int altered() {
    return altered;
  }

  @Override
  public synchronized String toString() {
    return String.format(
        "%-14s sent %6d  owed %6d  stored %6d  lost %d  altered %d  (without a time of their own;"
            + " again after a kill: %d)",
        CHANNEL, ledger.sent(), ledger.owed(), ledger.stored(), ledger.lost(), altered, again);
  }
}
