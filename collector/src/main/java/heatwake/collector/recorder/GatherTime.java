package heatwake.collector.recorder;

import java.util.concurrent.TimeUnit;

/**
 * How long deliveries are gathered for one commit. Usually long, since every commit makes the disk
 * write; but a sender that sends one message at a time comes with the next one as soon as it is
 * told that the last one is safe, and gets no further than that time allows: for it the time is
 * halved as often as that happens, and doubled again when nobody waited. Not safe for use by
 * several threads.
 */
final class GatherTime {
  static final long LONGEST_MS = 400;
  private static final long LONGEST_NS = TimeUnit.MILLISECONDS.toNanos(LONGEST_MS);
  private static final long SHORTEST_NS = TimeUnit.MILLISECONDS.toNanos(50);

  /** Who sends within this time of being told has waited for it; over a radio it takes a while. */
  private static final long AT_ONCE_NS = TimeUnit.MILLISECONDS.toNanos(30);

  private long ns = LONGEST_NS;
  private long toldNs;
  private boolean told;

  /** From the first moment of gathering on, nanoseconds. */
  long ns() {
    return ns;
  }

  /** Somebody was told that its delivery is safe. */
  void told(long nowNs) {
    told = true;
    toldNs = nowNs;
  }

  /** A delivery came whose sender is to be told. */
  void came(long nowNs) {
    if (told) {
      told = false;
      ns =
          nowNs - toldNs < AT_ONCE_NS
              ? Math.max(SHORTEST_NS, ns / 2)
              : Math.min(LONGEST_NS, ns * 2);
    }
  }
}
