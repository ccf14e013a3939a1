package heatwake.collector.recorder;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;

/**
 * Hears whether a probe sends as it should: neither nothing nor far too much. Where the rig states
 * no interval, the usual one is learned. Goes by the clock that nobody can set.
 */
final class ProbeWatch {
  /** Silence shorter than this is never told. */
  private static final double LEAST_SILENCE_S = 10;

  /** Silence of a probe whose interval is not known. */
  private static final double UNKNOWN_SILENCE_S = 120;

  private static final double SILENT_INTERVALS = 5;
  private static final int READINGS_TO_LEARN = 5;
  private static final double LEARN_LONGER = 0.5;
  private static final double LEARN_SHORTER = 0.05;

  /** A probe with no stated interval floods above this. */
  private static final double UNKNOWN_FLOOD_PER_S = 200;

  private static final double FLOOD_FACTOR = 10;
  private static final double LEAST_FLOOD_PER_S = 20;
  private static final double WINDOW_S = 1;

  private final OptionalDouble statedIntervalS;
  private double usualIntervalS;
  private long lastNs;
  private long heard;
  private long windowStartNs;
  private long inWindow;
  private double lastRatePerS;
  private boolean silent;
  private boolean flooding;

  ProbeWatch(OptionalDouble statedIntervalS, long nowNs) {
    this.statedIntervalS = statedIntervalS;
    this.lastNs = nowNs;
    this.windowStartNs = nowNs;
  }

  /** What has changed about a probe. */
  enum Change {
    NOTHING,
    FELL_SILENT,
    SPOKE_AGAIN,
    FLOODS,
    FLOODS_NO_MORE
  }

  /** A reading came. */
  Change heard(long nowNs) {
    double gapS = seconds(nowNs - lastNs);
    if (heard == 1) {
      usualIntervalS = gapS;
    } else if (heard > 1) {
      double learn = gapS > usualIntervalS ? LEARN_LONGER : LEARN_SHORTER;
      usualIntervalS += learn * (gapS - usualIntervalS);
    }
    heard++;
    inWindow++;
    lastNs = nowNs;
    if (silent) {
      silent = false;
      return Change.SPOKE_AGAIN;
    }
    return Change.NOTHING;
  }

  /** Looks at the clock; to be called about once a second. */
  Change look(long nowNs) {
    double windowS = seconds(nowNs - windowStartNs);
    if (windowS >= WINDOW_S) {
      lastRatePerS = inWindow / windowS;
      windowStartNs = nowNs;
      inWindow = 0;
      boolean above = lastRatePerS > floodPerS();
      if (above != flooding) {
        flooding = above;
        return above ? Change.FLOODS : Change.FLOODS_NO_MORE;
      }
    }
    if (!silent && silenceS(nowNs) > silenceLimitS()) {
      silent = true;
      return Change.FELL_SILENT;
    }
    return Change.NOTHING;
  }

  /** Seconds since the last reading, or since the watch began. */
  double silenceS(long nowNs) {
    return seconds(nowNs - lastNs);
  }

  boolean everHeard() {
    return heard > 0;
  }

  /** What is expected, in words. */
  String expectation() {
    OptionalDouble interval = intervalS();
    return interval.isPresent()
        ? String.format(
            Locale.ROOT,
            "%s is one every %.3g s",
            statedIntervalS.isPresent() ? "stated" : "usual",
            interval.getAsDouble())
        : "no interval is known";
  }

  /** Readings a second in the last window. */
  double ratePerS() {
    return lastRatePerS;
  }

  private double silenceLimitS() {
    OptionalDouble interval = intervalS();
    return interval.isPresent()
        ? Math.max(LEAST_SILENCE_S, SILENT_INTERVALS * interval.getAsDouble())
        : UNKNOWN_SILENCE_S;
  }

  private double floodPerS() {
    return statedIntervalS.isPresent()
        ? Math.max(LEAST_FLOOD_PER_S, FLOOD_FACTOR / statedIntervalS.getAsDouble())
        : UNKNOWN_FLOOD_PER_S;
  }

  private OptionalDouble intervalS() {
    if (statedIntervalS.isPresent()) {
      return statedIntervalS;
    }
    return heard >= READINGS_TO_LEARN ? OptionalDouble.of(usualIntervalS) : OptionalDouble.empty();
  }

  private static double seconds(long ns) {
    return ns / (double) TimeUnit.SECONDS.toNanos(1);
  }
}
