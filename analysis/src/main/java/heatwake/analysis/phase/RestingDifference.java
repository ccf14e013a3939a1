package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Median;

/**
 * What the pair of water probes shows while water moves and the compressor rests: its middle over
 * all rests, once run-on heat is carried away.
 */
final class RestingDifference {
  /** Run-on heat is surely carried away this long after a stop (common practice). */
  private static final double SETTLED_S = 300;

  /** The difference is found over so long (ours). */
  private static final double LEAST_S = 60;

  /** A rest that only the water tells is one if it lasts longer than a defrost (1 to 12 min). */
  private static final double LONGER_THAN_A_DEFROST_S = 1200;

  private final Timeline timeline;
  private final double[] difference;
  private final Track moves;

  RestingDifference(Timeline timeline, double[] difference, Track moves) {
    this.timeline = timeline;
    this.difference = difference;
    this.moves = moves;
  }

  /**
   * The difference in kelvin; NaN where none was seen.
   *
   * @param rests where something other than the water's temperatures shows a rest
   * @param compressor whether it runs; where nothing else shows a rest, long ones by it count
   */
  double kelvin(Track rests, Track compressor) {
    double found = middle(rests, Track.YES, 0);
    return Double.isNaN(found)
        ? middle(compressor, Track.NO, timeline.instants(LONGER_THAN_A_DEFROST_S))
        : found;
  }

  private double middle(Track track, byte atRest, int shortest) {
    double[] found = new double[difference.length];
    int count = 0;
    for (int i = 0; i < found.length; ) {
      int end = track.endOfStretch(i);
      int settled = i == 0 ? 0 : i + timeline.instants(SETTLED_S);
      boolean counts = track.at(i) == atRest && end - i > shortest;
      for (int k = settled; counts && k < end; k++) {
        if (moves.yes(k) && !Double.isNaN(difference[k])) {
          found[count++] = difference[k];
        }
      }
      i = end;
    }
    if (count < timeline.instants(LEAST_S)) {
      return Double.NaN;
    }
    return Median.withDefaults().evaluate(Arrays.copyOf(found, count));
  }
}
