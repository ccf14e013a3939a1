package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.BitSet;

/**
 * Leaves out readings that cannot be true of their channel ({@link Channel#isPossible}) or are no
 * measurement at all ({@link PowerOnValue}).
 */
public final class Screening {
  private Screening() {}

  /** The possible readings of a series; the series itself where all are possible. */
  public static Series possible(Series series) {
    return series.without(impossible(series));
  }

  /**
   * The same, less what the refrigerant cannot do ({@link BeyondCritical}) and what its neighbours
   * in the water deny ({@link WaterJump}).
   */
  public static Series possible(Series series, Recording recording) {
    BitSet impossible = impossible(series);
    impossible.or(BeyondCritical.in(series, recording.rig().heater()));
    Series possible = series.without(impossible);
    BitSet denied = new BitSet();
    WaterJump.in(possible, recording).forEach(jump -> denied.set(jump.from(), jump.to()));
    return possible.without(denied);
  }

  /** The readings that take no part, by their number in the series. */
  public static BitSet impossible(Series series) {
    Channel channel = series.channel();
    Unit unit = channel.storedUnit();
    BitSet impossible = PowerOnValue.in(series);
    if (areAllPossible(series)) {
      return impossible;
    }
    for (int r = 0; r < series.size(); r++) {
      if (!channel.isPossible(unit.fromSi(series.value(r)))) {
        impossible.set(r);
      }
    }
    return impossible;
  }

  /** By the lowest and the highest, so that a series without fault is only looked through. */
  private static boolean areAllPossible(Series series) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int r = 0; r < series.size(); r++) {
      // Not a number stays not a number, and is not possible.
      lowest = Math.min(lowest, series.value(r));
      highest = Math.max(highest, series.value(r));
    }
    Channel channel = series.channel();
    Unit unit = channel.storedUnit();
    return channel.isPossible(unit.fromSi(lowest)) && channel.isPossible(unit.fromSi(highest));
  }
}
