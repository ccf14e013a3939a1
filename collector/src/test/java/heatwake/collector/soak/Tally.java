package heatwake.collector.soak;

import heatwake.analysis.quantity.Channel;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;

/** What was sent on one channel, and what became of it. Numbered from 0 in order of sending. */
final class Tally {
  static final long START_MS = 1935684000000L;
  private static final long STEP_MS = 1000;

  /** More than are sent in some seconds. */
  private static final int LATELY = 1000;

  /** Something owed, and since when. */
  private record Owed(int number, long sinceMs) {}

  private final Channel channel;
  private final Ledger ledger = new Ledger();
  private final Deque<Owed> lately = new ArrayDeque<>();
  private final Set<Long> seen = new HashSet<>();
  private int altered;
  private int doubledInARun;
  private int again;

  Tally(Channel channel) {
    this.channel = channel;
  }

  Channel channel() {
    return channel;
  }

  /** The number of the next one to send. */
  synchronized int next() {
    return ledger.next();
  }

  /** The number of the last one sent. */
  synchronized int last() {
    return ledger.sent() - 1;
  }

  /** It must be there in the end: a peer acknowledged it, or all was well while it was sent. */
  synchronized void owe(int number) {
    ledger.owe(number);
    lately.addLast(new Owed(number, System.currentTimeMillis()));
    if (lately.size() > LATELY) {
      lately.removeFirst();
    }
  }

  /** What was owed since a moment is owed no more: who had acknowledged it was killed. */
  synchronized void pardon(long sinceMs) {
    for (Owed one : lately) {
      if (one.sinceMs() >= sinceMs) {
        ledger.pardon(one.number());
      }
    }
  }

  static long timeMs(int number) {
    return START_MS + STEP_MS * number;
  }

  /** A value that tells its number. */
  static double value(int number) {
    return 10 + number % 4096 / 64.0;
  }

  /** How it is sent. */
  String message(int number) {
    return "{\"v\":" + value(number) + ",\"at\":" + timeMs(number) + "}";
  }

  /** Forgets what was found, to look again. */
  synchronized void recount() {
    ledger.recount();
    seen.clear();
    altered = 0;
    doubledInARun = 0;
    again = 0;
  }

  /** A reading found in a run. */
  synchronized void found(long run, long timeMs, double value) {
    long number = (timeMs - START_MS) / STEP_MS;
    boolean known = (timeMs - START_MS) % STEP_MS == 0 && number >= 0 && number < ledger.sent();
    if (!known || value != value((int) number)) {
      altered++;
    } else if (!seen.add(run << 32 | number)) {
      doubledInARun++;
    } else if (!ledger.find((int) number)) {
      again++;
    }
  }

  /** Owed and not there. */
  synchronized int lost() {
    return ledger.lost();
  }

  int doubled() {
    return doubledInARun;
  }

  /** Found in a second run as well. */
  int again() {
    return again;
  }

  int altered() {
    return altered;
  }

  /** Sent, not owed and not there: what the rule allows to be lost. */
  private int forgiven() {
    return ledger.sent() - ledger.stored() - ledger.lost();
  }

  @Override
  public synchronized String toString() {
    return String.format(
        "%-14s sent %6d  owed %6d  stored %6d  lost %d  doubled %d  altered %d"
            + "  (not owed and missing %d, again in a later run %d)",
        channel,
        ledger.sent(),
        ledger.owed(),
        ledger.stored(),
        ledger.lost(),
        doubledInARun,
        altered,
        forgiven(),
        again);
  }
}
