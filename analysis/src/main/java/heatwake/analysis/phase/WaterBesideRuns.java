package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;

/**
 * Water movement shortly before a compressor start and after a stop where no channel tells of it. A
 * heater starts only with water moving; after a stop the rise dies away within minutes only if
 * water still moves. So long as entering and leaving water then keep what they showed, it goes on
 * moving.
 */
final class WaterBesideRuns {
  /**
   * Rise under this share of what it was shortly after a stop: water carried the heat away (ours).
   */
  private static final double CARRIED_AWAY = 0.2;

  /** Time in which the heat is carried away (common practice: a minute or two). */
  private static final double RUN_ON_S = 300;

  /**
   * Two probes may differ by more than that. Standing water that falls by so much, K, in those
   * minutes is several kelvin above the air, and goes on falling by kelvins (a pipe takes an hour
   * or so: common practice); where both pipes then keep their temperature for so long, s, within so
   * much, K, water moves (all ours).
   */
  private static final double FALLEN_K = 1;

  private static final double FLAT_S = 1800;

  private static final double FLAT_K = 0.15;

  /** Entering water and difference keep their value within this (ours). */
  private static final double KEEPS_K = 0.25;

  /**
   * Water that moves through a resting heater leaves as it enters; two probes do not differ by more
   * than this (common practice). What does is hot water that stands in the exchanger, K.
   */
  private static final double MOST_OFFSET_K = 3;

  /** Longer than this nothing is said (ours). */
  private static final double MOST_S = 900;

  private final double[] in;
  private final double[] out;
  private final long stepMs;

  private WaterBesideRuns(Timeline timeline) {
    this.in = timeline.of(Channel.WATER_IN);
    this.out = timeline.of(Channel.WATER_OUT);
    this.stepMs = timeline.stepMs();
  }

  /** Adds to a track that knows nothing what temperatures beside compressor runs show. */
  static void addTo(Track waterMoves, Track compressor, Timeline timeline) {
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return;
    }
    WaterBesideRuns beside = new WaterBesideRuns(timeline);
    for (int i = 1; i < compressor.size(); i++) {
      if (compressor.yes(i) && compressor.no(i - 1)) {
        beside.before(waterMoves, compressor, i);
      } else if (compressor.no(i) && compressor.yes(i - 1)) {
        beside.after(waterMoves, compressor, i);
      }
    }
  }

  private int instants(double seconds) {
    return (int) Math.max(1, Math.round(seconds * 1000 / stepMs));
  }

  private void before(Track waterMoves, Track compressor, int start) {
    int from = Math.max(0, start - instants(60));
    double inK = Stretch.mean(in, from, start);
    double differenceK = Stretch.mean(out, from, start) - inK;
    for (int i = start - 1; i >= Math.max(0, start - instants(MOST_S)); i--) {
      if (!compressor.no(i) || !keeps(i, inK, differenceK)) {
        return;
      }
      waterMoves.set(i, Track.YES);
    }
  }

  private void after(Track waterMoves, Track compressor, int stop) {
    int settled = stop + instants(RUN_ON_S);
    int until = settled + instants(60);
    if (until > in.length) {
      return;
    }
    int from = Math.max(0, stop - instants(60));
    double ranK = Stretch.mean(out, from, stop) - Stretch.mean(in, from, stop);
    double inK = Stretch.mean(in, settled, until);
    double differenceK = Stretch.mean(out, settled, until) - inK;
    boolean carriedAway =
        Math.abs(differenceK) < MOST_OFFSET_K
            && (Math.abs(differenceK) < CARRIED_AWAY * Math.abs(ranK) + 0.1
                || (ranK - differenceK > FALLEN_K && isFlat(in, settled) && isFlat(out, settled)));
    if (!carriedAway || Math.abs(inK - Stretch.mean(in, from, stop)) > KEEPS_K) {
      return;
    }
    waterMoves.fill(stop, settled, Track.YES);
    for (int i = settled; i < Math.min(in.length, stop + instants(MOST_S)); i++) {
      if (!compressor.no(i) || !keeps(i, inK, differenceK)) {
        return;
      }
      waterMoves.set(i, Track.YES);
    }
  }

  /** Whether a pipe keeps its temperature from an instant on. */
  private boolean isFlat(double[] pipe, int from) {
    int to = from + instants(FLAT_S);
    int part = instants(RUN_ON_S);
    return to <= pipe.length
        && Math.abs(Stretch.mean(pipe, from, from + part) - Stretch.mean(pipe, to - part, to))
            < FLAT_K;
  }

  private boolean keeps(int i, double inK, double differenceK) {
    return Math.abs(differenceK) < MOST_OFFSET_K
        && Math.abs(in[i] - inK) < KEEPS_K
        && Math.abs(out[i] - in[i] - differenceK) < KEEPS_K;
  }
}
