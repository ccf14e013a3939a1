package heatwake.analysis.phase;

import heatwake.analysis.electric.CountedPower;
import heatwake.analysis.timeline.Timeline;

/**
 * Puts starts and stops where a register and an effect of the compressor together say. The register
 * leaves a change open for a step over the change of power; the effect's own lag is known roughly.
 * The two are weighted by their variances (GUM), within what the register permits.
 */
final class CountedEdges {
  /** A reading may come late by this share of the usual interval (ours). */
  private static final double ONE_INTERVAL = 1.5;

  /** So many steps of the register show a level no better than one (ours). */
  private static final double ONE_STEP = 1.5;

  /** What an effect tells of the moment is uncertain by so much (ours; see {@link RiseFeet}). */
  private static final double EFFECT_S = 25;

  /** An effect further from the register's change than this is another one's (ours). */
  private static final double TOGETHER_S = 120;

  private final Timeline timeline;
  private final CountedPower counted;
  private final double[] power;
  private final Track above;

  CountedEdges(Timeline timeline, CountedPower counted, Track above) {
    this.timeline = timeline;
    this.counted = counted;
    this.power = counted.powerW();
    this.above = above;
  }

  /**
   * The register's answers with each change in its place.
   *
   * @param effect what the effect answers; its changes are moved to the same places
   */
  Track placed(Track effect) {
    Track placed = above.copy();
    for (int i = 1; i < power.length; i++) {
      boolean changes = above.known(i) && above.at(i) == -above.at(i - 1);
      if (changes) {
        int from = levelBefore(i);
        int to = levelAfter(i);
        double change = power[to] - power[from - 1];
        if (change != 0 && !Double.isNaN(change)) {
          place(placed, effect, i, from, to);
        }
      }
    }
    return placed;
  }

  private void place(Track placed, Track effect, int edge, int from, int to) {
    double low = power[from - 1];
    double change = power[to] - low;
    double moved = 0;
    for (int i = from; i < to; i++) {
      moved += (power[i] - low) / change;
    }
    double openS = counted.stepJ() / Math.abs(change);
    // The line bends around the register's corners: a start shows as late as can be, a stop as
    // early.
    double shiftS = above.yes(edge) ? -openS / 2 : openS / 2;
    double middleS = (to - moved) * timeline.stepS() + shiftS;
    // A step is open all along, an interval between readings is shared out by its energy.
    double variance = (openS * openS + counted.intervalS() * counted.intervalS() / 4) / 12;
    int other = begins(effect, edge, middleS, openS);
    double atS = middleS;
    if (other >= 0) {
      double otherS = other * timeline.stepS();
      double otherVariance = EFFECT_S * EFFECT_S;
      double together = (middleS * otherVariance + otherS * variance) / (variance + otherVariance);
      double half = (openS + counted.intervalS()) / 2;
      atS = Math.max(middleS - half, Math.min(middleS + half, together));
    }
    int at = (int) Math.round(Math.max(0, Math.min(power.length, atS / timeline.stepS())));
    placed.moveEdge(edge, at);
    if (other >= 0) {
      effect.moveEdge(other, at);
    }
  }

  /** Where the effect of a change begins; -1 if it does not show. */
  private int begins(Track effect, int edge, double middleS, double openS) {
    byte after = above.at(edge);
    int best = -1;
    int from = (int) Math.max(1, (middleS - openS / 2 - TOGETHER_S) / timeline.stepS());
    double until = (middleS + openS / 2 + TOGETHER_S) / timeline.stepS();
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = from; i < effect.size() && i <= until; i++) {
      if (effect.at(i) == after && effect.at(i - 1) == -after) {
        double off = Math.abs(i * timeline.stepS() - middleS);
        if (off < nearest) {
          nearest = off;
          best = i;
        }
      }
    }
    return best;
  }

  /** First instant after the level that was held before a change. */
  private int levelBefore(int edge) {
    int from = edge;
    while (true) {
      int begin = from - 1;
      while (begin > 0 && power[begin - 1] == power[from - 1]) {
        begin--;
      }
      if (begin == 0
          || !isUnresolved(begin, edge)
          || !between(power[from - 1], power[begin - 1], power[edge])) {
        return from;
      }
      from = begin;
    }
  }

  /** First instant of the level that is held after a change. */
  private int levelAfter(int edge) {
    int to = edge;
    while (true) {
      int end = to + 1;
      while (end < power.length && power[end] == power[to]) {
        end++;
      }
      if (end == power.length
          || !isUnresolved(edge, end)
          || !between(power[to], power[edge - 1], power[end])) {
        return to;
      }
      to = end;
    }
  }

  /** A single interval between readings, or energy of a single step: a mixture of two levels. */
  private boolean isUnresolved(int from, int to) {
    double seconds = (to - from) * timeline.stepS();
    double energyJ = 0;
    for (int i = from; i < to; i++) {
      energyJ += power[i] * timeline.stepS();
    }
    return seconds <= ONE_INTERVAL * counted.intervalS() || energyJ <= ONE_STEP * counted.stepJ();
  }

  private static boolean between(double value, double one, double other) {
    return value > Math.min(one, other) && value < Math.max(one, other);
  }
}
