package heatwake.collector.broker;

/** A bucket of messages that refills evenly and holds ten seconds' worth. Of one thread. */
final class Allowance {
  private static final int SECONDS_HELD = 10;

  private final double perNano;
  private final double most;
  private double left;
  private long filledAtNanos = System.nanoTime();

  Allowance(int perS) {
    perNano = perS / 1e9;
    most = (double) perS * SECONDS_HELD;
    left = most;
  }

  /** Takes one message out, if there is one. */
  boolean take() {
    long now = System.nanoTime();
    left = Math.min(most, left + (now - filledAtNanos) * perNano);
    filledAtNanos = now;
    if (left < 1) {
      return false;
    }
    left--;
    return true;
  }

  /** How long until the next message may be taken. */
  long nanosToNext() {
    return Math.max(1, (long) Math.ceil((1 - left) / perNano));
  }
}
