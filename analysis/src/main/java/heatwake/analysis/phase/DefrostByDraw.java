package heatwake.analysis.phase;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;

/**
 * Defrosts that the draw shows where the water is not seen to be chilled: by hot gas, which goes
 * past the condenser into the iced coil, or by a reversed cycle whose chill is less than the pair
 * of probes leaves open. The fan stops, so the draw steps down, the water is not heated for some
 * minutes, and both come back by themselves. A compressor that slows down, or one that fails, does
 * one of it.
 */
final class DefrostByDraw {
  /** Longest defrost; common practice has 1 to 12 min, with a margin. */
  private static final double MOST_S = 1200;

  private static final double LEAST_S = 60;

  /** Rise under this share of the usual, until over the other one: none (ours). */
  private static final double GONE = 0.25;

  private static final double GONE_UNTIL = 0.35;

  /**
   * Draw meanwhile, as shares of what it was (ours: a fan alone draws less; the fan of a coil takes
   * a tenth of the whole and more, and rests).
   */
  private static final double DRAWS_LEAST = 0.3;

  private static final double DRAWS_MOST = 0.92;

  /** It heats from this share of the usual rise on (ours). */
  private static final double HEATS = 0.5;

  private final Timeline timeline;
  private final Track compressor;
  private final double[] riseK;
  private final double fullK;
  private final double[] draw;
  private final double[] air;
  private final HeatAround around;

  private DefrostByDraw(Timeline timeline, Track compressor, WaterRise rise, double[] draw) {
    this.timeline = timeline;
    this.compressor = compressor;
    this.riseK = rise.riseK();
    this.fullK = rise.fullK();
    this.draw = draw;
    this.air = timeline.of(timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT));
    this.around = new HeatAround(timeline, compressor, riseK);
  }

  /** Marks them among phases of a running compressor; nothing where draw or rise is not known. */
  static void mark(Phase[] phase, Timeline timeline, Track compressor, Optional<WaterRise> rise) {
    boolean power = timeline.has(Channel.POWER);
    if ((!power && !timeline.has(Channel.CURRENT))
        || rise.filter(one -> !Double.isNaN(one.fullK())).isEmpty()) {
      return;
    }
    double[] draw = timeline.of(power ? Channel.POWER : Channel.CURRENT);
    new DefrostByDraw(timeline, compressor, rise.get(), draw).mark(phase);
  }

  private void mark(Phase[] phase) {
    double[] lacking = Arrays.stream(riseK).map(kelvin -> -kelvin).toArray();
    Track gone = Track.above(lacking, -GONE * fullK, -GONE_UNTIL * fullK);
    int most = timeline.instants(MOST_S);
    for (Stretch cold :
        Stretch.where(
            phase.length, i -> gone.yes(i) && compressor.yes(i) && phase[i] != Phase.DEFROST)) {
      if (cold.length() >= timeline.instants(LEAST_S) && cold.length() <= most) {
        markIfDefrost(phase, cold);
      }
    }
  }

  private void markIfDefrost(Phase[] phase, Stretch cold) {
    double before = around.meanBefore(draw, cold.from(), HEATS * fullK);
    int backFrom = heatsAgain(cold.to());
    if (Double.isNaN(before) || backFrom < 0 || cold.mean(air) > IcingAir.NO_COIL_ABOVE_K) {
      return;
    }
    int from = cold.from();
    int earliest = Math.max(0, from - timeline.instants(HeatAround.FELL_WITHIN_S));
    while (from > earliest && !(draw[from - 1] > DRAWS_MOST * before)) {
      from--;
    }
    int to = cold.to();
    while (to > cold.from() && !(draw[to - 1] < DRAWS_MOST * before)) {
      to--;
    }
    double meanwhile = new Stretch(from, to).mean(draw) / before;
    if (meanwhile >= DRAWS_LEAST && meanwhile <= DRAWS_MOST && !rests(from, backFrom)) {
      Arrays.fill(phase, from, to, Phase.DEFROST);
    }
  }

  /** The instant at which heat is back, or the run's end where that comes first; -1 for neither. */
  private int heatsAgain(int from) {
    int again = around.again(from, HEATS * fullK);
    return again < 0 && around.isCutOff(from) ? riseK.length : again;
  }

  private boolean rests(int from, int to) {
    for (int i = from; i < to; i++) {
      if (compressor.no(i)) {
        return true;
      }
    }
    return false;
  }
}
