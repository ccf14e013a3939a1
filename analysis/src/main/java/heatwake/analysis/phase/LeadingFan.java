package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A fan that draws more than the threshold for the compressor. It shows ahead of a start: flat and
 * low, until the compressor's climb begins.
 */
final class LeadingFan {
  /** A fan runs no longer than this before the compressor (common practice). */
  private static final double AHEAD_S = 180;

  /** A fan draws less than this share of the compressor (ours). */
  static final double SHARE = 0.17;

  /** Or of a small compressor this, where its effect is seen and is not there yet (ours). */
  private static final double SHARE_WITHOUT_EFFECT = 0.4;

  /**
   * Or this, where the step after it is a sharp one: an inverter that holds a slow speed climbs
   * from it over tens of seconds (common practice; share ours).
   */
  private static final double SHARE_BEFORE_A_STEP = 0.4;

  /** A step leads to so many times the fan's draw at least (ours; 2.5 times by the share above). */
  private static final double STEP = 1.5;

  /** So much of what is drawn later is reached at once by a sharp step (ours). */
  private static final double SHARP = 0.7;

  /** At once: within this time, which readings have to be close enough to tell (ours). */
  private static final double AT_ONCE_S = 5;

  /**
   * What is drawn later is taken from this time after the step on; an inrush is over then (ours).
   */
  private static final double LATER_S = 20;

  /** It is flat within this share of its middle, so long and for so many readings (ours). */
  private static final double FLAT = 0.06;

  private static final double FLAT_S = 6;
  private static final int FLAT_INTERVALS = 3;

  /** A heater at rest draws less than this share of its fan (ours). */
  static final double REST_OF_FAN = 0.5;

  /** A draw this far above the fan's is no longer the fan alone (ours). */
  static final double ABOVE = 1.15;

  private final double[] draw;
  private final CompressorEffect effect;
  private final double compressor;
  private final double leastFan;
  private final int longest;
  private final int flat;
  private final int interval;
  private final int atOnce;
  private final int later;

  private LeadingFan(
      Timeline timeline,
      Channel channel,
      CompressorEffect effect,
      double compressor,
      double leastFan) {
    this.draw = timeline.of(channel);
    this.effect = effect;
    this.compressor = compressor;
    this.leastFan = leastFan;
    this.longest = timeline.instants(AHEAD_S);
    double intervalS = timeline.intervalMs(channel) / 1e3;
    double flatS = Math.max(FLAT_S, FLAT_INTERVALS * intervalS);
    this.interval = timeline.instants(Math.max(FLAT_S / FLAT_INTERVALS, intervalS));
    this.flat = timeline.instants(flatS);
    this.atOnce = intervalS <= AT_ONCE_S ? timeline.instants(AT_ONCE_S) : 0;
    this.later = timeline.instants(LATER_S);
  }

  /**
   * The fan's usual draw, if it was seen ahead of starts.
   *
   * @param aboveThreshold where the draw is above the threshold
   * @param leastFan what a fan draws at least more than the heater at rest
   */
  static OptionalDouble draw(
      Timeline timeline,
      Channel channel,
      Track aboveThreshold,
      DrawLevels levels,
      CompressorEffect effect,
      double leastFan) {
    return new LeadingFan(timeline, channel, effect, levels.compressor(), leastFan)
        .draw(aboveThreshold);
  }

  private OptionalDouble draw(Track aboveThreshold) {
    double[] seen = new double[draw.length];
    int count = 0;
    for (int i = 1; i < draw.length; i++) {
      if (aboveThreshold.yes(i) && aboveThreshold.no(i - 1)) {
        Stretch held = heldFrom(i);
        boolean climbs =
            held.length() >= flat && held.to() < draw.length && aboveThreshold.yes(held.to());
        if (climbs && !followsFan(i) && isFan(held)) {
          seen[count++] = middle(held.from(), held.to());
        }
      }
    }
    Arrays.sort(seen, 0, count);
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(seen[count / 2]);
  }

  /**
   * Whether the draw had stepped from rest to a low level just before, and stayed there for longer
   * than the line from one reading to the next: then that was the fan, and what follows is a
   * compressor that holds a slow speed before it climbs.
   */
  private boolean followsFan(int i) {
    int earliest = Math.max(0, i - longest);
    double rest = quantile(earliest, i, 0.25);
    int first = i;
    while (first > earliest
        && draw[first - 1] * REST_OF_FAN > rest
        && draw[first - 1] - rest > leastFan
        && draw[first - 1] < SHARE * compressor) {
      first--;
    }
    return first > earliest && i - first > interval;
  }

  /**
   * The time from {@code i} on over which the draw keeps its level; the first may lie on a flank.
   */
  private Stretch heldFrom(int i) {
    int from = i + flat / FLAT_INTERVALS;
    if (from + flat > draw.length) {
      return new Stretch(i, i);
    }
    double level = middle(from, from + flat);
    int end = from;
    while (end < draw.length && end - from < longest && isAt(level, end)) {
      end++;
    }
    int begin = from;
    while (begin > i && isAt(level, begin - 1)) {
      begin--;
    }
    return new Stretch(begin, end - from < longest ? end : draw.length);
  }

  private boolean isAt(double level, int k) {
    return Math.abs(draw[k] - level) <= FLAT * level;
  }

  private double middle(int from, int to) {
    return quantile(from, to, 0.5);
  }

  private double quantile(int from, int to, double share) {
    double[] sorted = Arrays.copyOfRange(draw, from, to);
    Arrays.sort(sorted);
    return sorted.length == 0 ? Double.NaN : sorted[(int) (share * (sorted.length - 1))];
  }

  private boolean isFan(Stretch held) {
    double level = middle(held.from(), held.to());
    return level < SHARE * compressor
        || (level < SHARE_WITHOUT_EFFECT * compressor
            && effect.isNoneBetween(held.from(), held.to()))
        || (level < SHARE_BEFORE_A_STEP * compressor
            && stepsSharply(level, held.to())
            && !effect.showsBetween(held.from(), held.to()));
  }

  /** Whether what is drawn later is well above the level before, and nearly reached at once. */
  private boolean stepsSharply(double level, int at) {
    int from = at + later;
    int to = Math.min(draw.length, from + later);
    if (atOnce == 0 || from >= to) {
      return false;
    }
    double reached = draw[Math.min(draw.length - 1, at + atOnce)];
    double drawnLater = middle(from, to);
    return drawnLater >= STEP * level && reached >= SHARP * drawnLater;
  }
}
