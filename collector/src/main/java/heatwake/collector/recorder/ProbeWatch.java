package heatwake.collector.recorder;

import heatwake.collector.probe.Reading;
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
  private static final int INTERVALS_TO_LEARN = 4;

  /** Shorter is a burst, no interval that a probe sends at; ours. */
  private static final double LEAST_INTERVAL_S = 0.005;

  /** Between two stamps further apart a clock was set or is wrong. */
  private static final double LONGEST_STAMPED_GAP_S = 86_400;

  private static final double LEARN_LONGER = 0.5;
  private static final double LEARN_SHORTER = 0.05;

  /** A probe with no stated interval floods above this. */
  private static final double UNKNOWN_FLOOD_PER_S = 200;

  private static final double FLOOD_FACTOR = 10;
  private static final double LEAST_FLOOD_PER_S = 20;
  private static final double WINDOW_S = 1;

  private final OptionalDouble statedIntervalS;
  private double usualIntervalS;
  private long learned;
  private long lastNs;
  private long heldUpNs = Long.MIN_VALUE;
  private Reading last;
  private long windowStartNs;
  private long inWindow;
  private double stampedInWindowS;
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
  Change heard(long nowNs, Reading reading) {
    if (last != null) {
      double gapS = gapS(nowNs, reading);
      learn(gapS);
      stampedInWindowS += reading.stampedByProbe() ? gapS : 0;
    }
    last = reading;
    inWindow++;
    lastNs = nowNs;
    if (silent) {
      silent = false;
      return Change.SPOKE_AGAIN;
    }
    return Change.NOTHING;
  }

  /**
   * Time since the reading before. Of two that bear the probe's own stamps it is that between the
   * stamps: what a broker kept for us comes in a burst. None where these run back or leap.
   */
  private double gapS(long nowNs, Reading reading) {
    if (!reading.stampedByProbe() || !last.stampedByProbe()) {
      return seconds(nowNs - lastNs);
    }
    double stampedS = (reading.timeMs() - last.timeMs()) / 1e3;
    return stampedS > 0 && stampedS < LONGEST_STAMPED_GAP_S ? stampedS : 0;
  }

  private void learn(double gapS) {
    if (gapS < LEAST_INTERVAL_S) {
      // Came together with the one before; no interval of a probe.
      return;
    }
    if (learned == 0) {
      usualIntervalS = gapS;
    } else {
      double learn = gapS > usualIntervalS ? LEARN_LONGER : LEARN_SHORTER;
      usualIntervalS += learn * (gapS - usualIntervalS);
    }
    learned++;
  }

  /** The recorder could not take what the probe may have sent. */
  void heldUp(long nowNs) {
    heldUpNs = nowNs;
  }

  /** Looks at the clock; to be called about once a second. */
  Change look(long nowNs) {
    double windowS = seconds(nowNs - windowStartNs);
    if (windowS >= WINDOW_S) {
      // Of stamped readings that were kept for us the rate is that at which they were taken.
      lastRatePerS = inWindow / Math.max(windowS, stampedInWindowS);
      windowStartNs = nowNs;
      inWindow = 0;
      stampedInWindowS = 0;
      boolean above = lastRatePerS > floodPerS();
      if (above != flooding) {
        flooding = above;
        return above ? Change.FLOODS : Change.FLOODS_NO_MORE;
      }
    }
    double quietS =
        Math.min(
            silenceS(nowNs),
            heldUpNs == Long.MIN_VALUE ? Double.MAX_VALUE : seconds(nowNs - heldUpNs));
    if (!silent && quietS > silenceLimitS()) {
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
    return last != null;
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
    return learned >= INTERVALS_TO_LEARN
        ? OptionalDouble.of(usualIntervalS)
        : OptionalDouble.empty();
  }

  private static double seconds(long ns) {
    return ns / (double) TimeUnit.SECONDS.toNanos(1);
  }
}
