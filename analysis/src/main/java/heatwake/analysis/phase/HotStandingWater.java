package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Times at which the water stands in a heater that has made it hot: it has warmed by tens of
 * kelvins, and stays above what any flowing water is warmed by until fresh water comes, whether the
 * compressor runs or rests. Told only where the heater has no flow meter.
 */
public final class HotStandingWater {
  /** Pool heaters warm their water by 2 to 3 K, by 6 K at the most (common practice), K. */
  private static final double MOST_WITH_WATER_K = 6;

  /** No flow warms it by so much (ours), K. */
  private static final double HOT_K = 20;

  /** It has climbed by this much within the time below, as no drifting probe does (ours). */
  private static final double CLIMB_K = 10;

  private static final double CLIMBS_WITHIN_S = 600;

  /** No flicker of a reading lasts so long, s; ours. */
  private static final double LASTS_S = 30;

  private HotStandingWater() {}

  /** What is said of the water, with it standing at those times. */
  public static Track with(Track waterMoves, Timeline timeline) {
    Track all = waterMoves.copy();
    markIn(all, timeline);
    return all;
  }

  /** Marks those times as such without water. */
  static void markIn(Track waterMoves, Timeline timeline) {
    for (Stretch hot : of(timeline)) {
      waterMoves.fill(hot.from(), hot.to(), Track.NO);
    }
  }

  /** Those times, in order. */
  public static List<Stretch> of(Timeline timeline) {
    if (!timeline.has(Channel.WATER_IN)
        || !timeline.has(Channel.WATER_OUT)
        || timeline.has(Channel.FLOW_HEATER)) {
      return List.of();
    }
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    int lasts =
        Math.max(timeline.instants(LASTS_S), 1 + timeline.intervalInstants(Channel.WATER_OUT));
    int back = timeline.instants(CLIMBS_WITHIN_S);
    return Stretch.where(in.length, i -> out[i] - in[i] > MOST_WITH_WATER_K).stream()
        .filter(
            warm ->
                Stretch.where(warm.to(), i -> i >= warm.from() && out[i] - in[i] > HOT_K).stream()
                    .filter(hot -> hot.length() >= lasts)
                    .anyMatch(hot -> climbs(out, Math.max(0, hot.from() - back), hot)))
        .toList();
  }

  /** Whether it is the leaving water that has grown so warm, not the entering that fell. */
  private static boolean climbs(double[] out, int from, Stretch hot) {
    double coldest =
        IntStream.range(from, hot.from())
            .mapToDouble(i -> out[i])
            .filter(k -> k > 0)
            .min()
            .orElse(Double.NaN);
    double hottest =
        IntStream.range(hot.from(), hot.to())
            .mapToDouble(i -> out[i])
            .filter(k -> k > 0)
            .max()
            .orElse(Double.NaN);
    return hottest - coldest > CLIMB_K;
  }
}
