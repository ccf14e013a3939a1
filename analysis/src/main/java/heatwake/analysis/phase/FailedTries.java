package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * Tries of a motor that does not start, in readings so seldom that one of ten seconds looks like a
 * run: a reading or two of draw, after which neither pressures nor water follow. A compressor that
 * turned for that long would have lifted the pressure, or given the water its heat.
 */
final class FailedTries {
  /** More readings on end than these are no spike (ours). */
  private static final int READINGS = 2;

  /** Nor is what lasts longer (ours: pressures and water have long followed by then). */
  private static final double LONGEST_S = 180;

  /** Pressures answer a start within this time (common practice: half a minute). */
  private static final double LIFTS_WITHIN_S = 60;

  /**
   * Above this share of the full lift the last run's still bleeds off, and hides a new one (ours).
   */
  private static final double LEVELLED_OUT = 0.5;

  /** Water has carried the heat away after this time (common practice: run-on heat). */
  private static final double CARRIED_AWAY_S = 300;

  private final Timeline timeline;
  private final Recording recording;
  private final Track compressor;
  private final double[] lift;
  private final double fullLift;
  private final Optional<WaterRise> rise;

  private FailedTries(
      Timeline timeline,
      Recording recording,
      Track compressor,
      Optional<RefrigerantLift> lift,
      Optional<WaterRise> rise) {
    this.timeline = timeline;
    this.recording = recording;
    this.compressor = compressor;
    Optional<RefrigerantLift> lifted = lift.filter(RefrigerantLift::lifts);
    this.lift =
        lifted.map(RefrigerantLift::pascals).orElseGet(() -> Timeline.unknown(timeline.size()));
    this.fullLift = lifted.map(RefrigerantLift::full).orElse(Double.NaN);
    this.rise = rise.filter(water -> !Double.isNaN(water.fullK()));
  }

  /**
   * Takes them from the times at which the compressor runs.
   *
   * @param lift what the pressures say of the compressor
   * @param rise what the water's rise says of it
   */
  static void takeFrom(
      Track compressor,
      Timeline timeline,
      Recording recording,
      Optional<RefrigerantLift> lift,
      Optional<WaterRise> rise) {
    FailedTries tries = new FailedTries(timeline, recording, compressor, lift, rise);
    for (int from = 0; from < compressor.size(); ) {
      int to = compressor.endOfStretch(from);
      boolean between = from > 0 && to < compressor.size();
      if (compressor.yes(from)
          && between
          && compressor.no(from - 1)
          && compressor.no(to)
          && tries.isSpike(from, to)
          && tries.isWithoutEffect(from, to)) {
        compressor.fill(from, to, Track.NO);
      }
      from = to;
    }
  }

  private boolean isSpike(int from, int to) {
    // The draw is told by the current only where the power is silent.
    int ofPower = readings(Channel.POWER, from, to);
    int telling = ofPower > 0 ? ofPower : readings(Channel.CURRENT, from, to);
    return (to - from) * timeline.stepS() <= LONGEST_S && telling <= READINGS;
  }

  private int readings(Channel channel, int from, int to) {
    Series series = recording.series().get(channel);
    return series == null
        ? 0
        : series.firstAtOrAfter(timeline.timeMs(to)) - series.firstAtOrAfter(timeline.timeMs(from));
  }

  /** The pressures tell sooner and more surely than the water; without either nothing is known. */
  private boolean isWithoutEffect(int from, int to) {
    double lifted = lifted(from, to);
    if (!Double.isNaN(lifted)) {
      return lifted < CompressorEffect.NONE * fullLift && lift[from - 1] < LEVELLED_OUT * fullLift;
    }
    int until = end(to, CARRIED_AWAY_S);
    return rise.isPresent()
        && Stretch.mean(rise.get().riseK(), from, until) * (until - from)
            < CompressorEffect.NONE * rise.get().fullK() * (to - from);
  }

  /** From just before to the highest within a minute; NaN where it is not known. */
  private double lifted(int from, int to) {
    double highest = Double.NaN;
    for (int i = from; i < end(to, LIFTS_WITHIN_S); i++) {
      highest = lift[i] > highest || Double.isNaN(highest) ? lift[i] : highest;
    }
    return highest - lift[from - 1];
  }

  /** So long after, but not into the next start. */
  private int end(int to, double seconds) {
    int end = to;
    int latest = Math.min(compressor.size(), to + timeline.instants(seconds));
    while (end < latest && !compressor.yes(end)) {
      end++;
    }
    return end;
  }
}
