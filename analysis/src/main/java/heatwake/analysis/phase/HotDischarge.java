package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * A discharge line that warms with a draw, and beyond all that could warm it from outside: only a
 * compressor does that, though it may move next to nothing.
 */
final class HotDischarge {
  /** It is held against the time before for so long, s; ours. */
  private static final double BEFORE_S = 120;

  /** A clip on the line has followed by then; common practice, s. */
  private static final double WARMS_WITHIN_S = 600;

  /**
   * The line of a sound compressor climbs by 20 K and more (common practice); sun and weather do
   * not move a line by this much in ten minutes (ours), K.
   */
  private static final double WARMED_K = 8;

  /** And so far above water and air, K; ours, above what clips are off by. */
  private static final double ABOVE_ALL_K = 5;

  private static final List<Channel> OUTSIDE =
      List.of(
          Channel.WATER_IN,
          Channel.WATER_OUT,
          Channel.WATER_POOL,
          Channel.AIR_IN,
          Channel.AIR_AMBIENT);

  private HotDischarge() {}

  /** Whether a draw shows it; false where it does not last long enough, or nothing tells. */
  static boolean isIn(Timeline timeline, Stretch drawn) {
    Stretch before =
        new Stretch(Math.max(0, drawn.from() - timeline.instants(BEFORE_S)), drawn.from());
    int to = drawn.from() + timeline.instants(WARMS_WITHIN_S);
    Stretch after = new Stretch(to - timeline.instants(BEFORE_S), to);
    if (to > drawn.to()) {
      return false;
    }
    double[] line = timeline.of(Channel.TEMP_DISCHARGE);
    double warmK = after.mean(line);
    double outsideK =
        OUTSIDE.stream()
            .mapToDouble(channel -> after.mean(timeline.of(channel)))
            .filter(kelvin -> !Double.isNaN(kelvin))
            .max()
            .orElse(Double.NaN);
    return warmK - before.mean(line) > WARMED_K && warmK - outsideK > ABOVE_ALL_K;
  }
}
