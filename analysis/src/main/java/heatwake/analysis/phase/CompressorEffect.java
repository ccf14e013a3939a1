package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoublePredicate;

/**
 * What a running compressor does elsewhere, as a share of the most it does in the run: pressure
 * lift, or where that is not read temperature rise. It tells a fan that draws much from a
 * compressor that draws little.
 *
 * <p>Both follow the compressor with a lag. So that a heater that cycles every few minutes is seen
 * alike, it is what they strive for that counts ({@link Striving}).
 */
final class CompressorEffect {
  /** A level that takes less than this share of all draw above it is only passed through (ours). */
  private static final double STAYS = 0.3;

  /** An effect under this share of the full one is none (ours). */
  static final double NONE = 0.25;

  /** So much of the full one only a compressor makes, within a short draw too (ours). */
  static final double LIFTED = 0.5;

  private final double[] share;
  private final Optional<PartingPressures> pressures;
  private final Optional<WaterRise> rise;
  private final int later;
  private final boolean absent;
  private final boolean goesWithTheDraw;

  private CompressorEffect(
      double[] share,
      Optional<PartingPressures> pressures,
      Optional<WaterRise> rise,
      int later,
      boolean absent,
      boolean goesWithTheDraw) {
    this.share = share;
    this.pressures = pressures;
    this.rise = rise;
    this.later = later;
    this.absent = absent;
    this.goesWithTheDraw = goesWithTheDraw;
  }

  static CompressorEffect of(
      Timeline timeline, Optional<RefrigerantLift> lift, Optional<WaterRise> rise) {
    boolean lifts = lift.filter(RefrigerantLift::lifts).isPresent();
    boolean heats = rise.isPresent() && !Double.isNaN(rise.get().fullK());
    double[] share = Timeline.unknown(timeline.size());
    int later = 0;
    if (lifts && lift.get().ofBothSides()) {
      share =
          Striving.shares(
              lift.get().pascals(),
              lift.get().full(),
              timeline.stepS(),
              timeline.intervalInstants(Channel.PRESSURE_DISCHARGE));
    } else if (heats) {
      share =
          Striving.shares(
              rise.get().riseK(),
              rise.get().fullK(),
              timeline.stepS(),
              Math.max(
                  timeline.intervalInstants(Channel.WATER_IN),
                  timeline.intervalInstants(Channel.WATER_OUT)));
      later = (int) Math.round(RiseFeet.BEGINS_LATER_S / timeline.stepS());
    }
    boolean draws = timeline.has(timeline.preferred(Channel.POWER, Channel.CURRENT));
    boolean goesWithTheDraw = draws && goesWithTheDraw(timeline, rise);
    boolean faint =
        goesWithTheDraw
            || rise.filter(
                    water ->
                        (draws && FaintRise.goesWithTheDraw(timeline, water))
                            || AnsweringWater.isSeen(timeline, water.riseK())
                            || FaintDefrosts.areSeen(timeline, water.riseK()))
                .isPresent();
    return new CompressorEffect(
        share,
        lift.filter(RefrigerantLift::lifts).map(one -> PartingPressures.of(one, timeline)),
        rise.filter(water -> heats),
        later,
        (lift.isPresent() || rise.isPresent()) && !lifts && !heats && !faint,
        goesWithTheDraw);
  }

  private static boolean goesWithTheDraw(Timeline timeline, Optional<WaterRise> rise) {
    return FaintLift.goesWithTheDraw(timeline)
        || rise.filter(water -> FaintRise.isPlain(timeline, water)).isPresent();
  }

  /**
   * Whether the water's rise, or the gauges, go with the draw: then a compressor turns, however
   * little it draws. A fan warms no water and parts no gauges.
   */
  boolean goesWithTheDraw() {
    return goesWithTheDraw;
  }

  /** Whether it could be seen, and was not all run. */
  boolean isAbsent() {
    return absent;
  }

  /**
   * Its middle share at the instants at which a draw stood between two levels; NaN if that was a
   * small part of all the time above the lower one.
   */
  double medianWhere(double[] draw, double from, double to) {
    double[] found = new double[draw.length];
    int count = 0;
    int above = 0;
    for (int i = 0; i < draw.length; i++) {
      if (draw[i] >= from) {
        above++;
        if (draw[i] < to && !Double.isNaN(share[i])) {
          found[count++] = share[i];
        }
      }
    }
    if (count == 0 || count < STAYS * above) {
      return Double.NaN;
    }
    double[] sorted = Arrays.copyOf(found, count);
    Arrays.sort(sorted);
    return sorted[count / 2];
  }

  /**
   * What is drawn while it is there: of all such draw the upper quarter's edge, since it stays for
   * a while after a stop; 0 where it never is.
   */
  double drawBeside(double[] draw) {
    double[] beside = new double[draw.length];
    int count = 0;
    for (int i = 0; i < draw.length; i++) {
      if (share[i] > LIFTED && !Double.isNaN(draw[i])) {
        beside[count++] = draw[i];
      }
    }
    Arrays.sort(beside, 0, count);
    return count == 0 ? 0 : beside[3 * (count - 1) / 4];
  }

  /** Whether it is seen at an instant, and is none. */
  boolean isNone(int i) {
    return share[i] < NONE;
  }

  /**
   * The first instant at which it is above a share of the full one; -1 if it never is. What stood
   * in the pipes comes past both probes one after the other when the water begins to move, and
   * looks like one for a while: such an instant counts only if there is no other.
   *
   * @param waterMoves whether water moves
   * @param flushed instants after which the pipes hold what moves
   */
  int firstAbove(double least, Track waterMoves, int flushed) {
    int meanwhile = -1;
    int stood = -1;
    for (int i = 0; i < share.length; i++) {
      stood = waterMoves.no(i) ? i : stood;
      if (share[i] > least && (stood < 0 || i - stood > flushed)) {
        return i;
      }
      if (share[i] > least && meanwhile < 0) {
        meanwhile = i;
      }
    }
    return meanwhile;
  }

  /**
   * Whether water is chilled by the end of a time: neither a fan nor a rest does so, only a
   * compressor whose cycle is turned round.
   */
  boolean chillsBy(int from, int to) {
    return rise.filter(water -> water.chills((from + to) / 2, to)).isPresent();
  }

  /** Whether the pressures are seen to part during a draw; see {@link PartingPressures#part}. */
  boolean partsPressures(int from, int to) {
    return pressures.filter(one -> one.part(from, to)).isPresent();
  }

  /** Whether it is seen, and is none, at most instants at which a draw between two would show. */
  boolean isNoneBetween(int from, int to) {
    return isMostly(seen -> seen < NONE, from, to)
        || pressures.filter(one -> one.stay(from, to)).isPresent();
  }

  /** Whether it is seen to be there at most instants at which a draw between two would show. */
  boolean showsBetween(int from, int to) {
    return isMostly(seen -> seen >= NONE, from, to);
  }

  private boolean isMostly(DoublePredicate holds, int from, int to) {
    int count = 0;
    for (int i = from; i < to; i++) {
      count += i + later < share.length && holds.test(share[i + later]) ? 1 : 0;
    }
    return 2 * count > to - from;
  }
}
