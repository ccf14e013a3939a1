package heatwake.analysis.pool;

import heatwake.analysis.phase.HotStandingWater;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.LeastSquares;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Temperature of the pool over a run and the pace at which it moves, with the heater on and off.
 *
 * <p>A probe in the pipe tells the pool only while water moves, so only such instants count, some
 * minutes after it began to move; a fan that runs says nothing of the water, the probes of it do.
 * The paces come from one fit over all of them: temperature against the time spent heating and the
 * time spent not heating.
 */
final class PoolPace {
  /** Pipes are flushed and the pool's layers mixed this long after the pump starts; ours. */
  private static final double FLUSHED_S = 300;

  /** After a short rest in which nothing told of the water, pipes are fresh from here on; ours. */
  private static final double PIPE_S = 60;

  /** Readings are thinned to one in this time: a pool moves slowly. */
  private static final double THINNED_S = 60;

  /** Ends of a run are averaged over this time. */
  private static final double END_S = 600;

  /** A pace needs at least this much time; ours. */
  private static final double SHORTEST_S = 3600;

  /** How far one place of a pool may stand from its mean; ours. */
  static final double MIXING_K = 0.05;

  private final Timeline timeline;
  private final double[] poolK;
  private final double[] heatingS;
  private final double[] restingS;

  private PoolPace(Timeline timeline, List<PhaseSpan> phases) {
    this.timeline = timeline;
    Channel channel = timeline.preferred(Channel.WATER_POOL, Channel.WATER_IN);
    int size = timeline.size();
    poolK = new double[size];
    heatingS = new double[size];
    restingS = new double[size];
    Arrays.fill(poolK, Double.NaN);
    double[] readings = timeline.of(channel);
    Track water = WaterMovement.of(timeline);
    double heating = 0;
    double resting = 0;
    double moving = 0;
    for (PhaseSpan span : phases) {
      boolean runs = span.phase().compressorRuns();
      boolean moves = runs || span.phase() == Phase.CIRCULATING;
      boolean fan = span.phase() == Phase.FAN;
      boolean isBriefFan = fan && span.durationS() <= FLUSHED_S;
      int end = timeline.firstAtOrAfter(span.endMs());
      for (int i = timeline.firstAtOrAfter(span.startMs()); i < end; i++) {
        heating += runs ? timeline.stepS() : 0;
        resting += runs ? 0 : timeline.stepS();
        if (moves || (fan && water.yes(i))) {
          moving += timeline.stepS();
        } else if (isBriefFan && !water.no(i)) {
          moving = Math.min(moving, FLUSHED_S - PIPE_S);
        } else {
          moving = 0;
        }
        heatingS[i] = heating;
        restingS[i] = resting;
        if (moving > FLUSHED_S) {
          poolK[i] = readings[i];
        }
      }
    }
    if (channel == Channel.WATER_IN) {
      HotStandingWater.of(timeline)
          .forEach(hot -> Arrays.fill(poolK, hot.from(), hot.to(), Double.NaN));
    }
  }

  static PoolPace of(Timeline timeline, List<PhaseSpan> phases) {
    return new PoolPace(timeline, phases);
  }

  /** Pool temperature at every instant that tells it, else NaN. */
  double[] poolK() {
    return poolK;
  }

  /** Mean over the first ten minutes that tell it. */
  Optional<Double> firstK() {
    int first = first();
    int to = Math.min(poolK.length, first + timeline.instants(END_S));
    return known(MovingMean.once(poolK, Math.min(first, poolK.length), to));
  }

  /** The last moment that tells it, UTC milliseconds. */
  OptionalLong lastMs() {
    int end = end();
    return end == 0 ? OptionalLong.empty() : OptionalLong.of(timeline.timeMs(end - 1));
  }

  /** The first instant that tells it; one more than the last of all if none does. */
  private int first() {
    int first = 0;
    while (first < poolK.length && Double.isNaN(poolK[first])) {
      first++;
    }
    return first;
  }

  /** One more than the last instant that tells it. */
  private int end() {
    int end = poolK.length;
    while (end > 0 && Double.isNaN(poolK[end - 1])) {
      end--;
    }
    return end;
  }

  /** Mean over the last ten minutes that tell it. */
  Optional<Double> lastK() {
    int end = end();
    int from = Math.max(0, end - timeline.instants(END_S));
    return known(MovingMean.once(poolK, from, end));
  }

  private static Optional<Double> known(double value) {
    return Double.isNaN(value) ? Optional.empty() : Optional.of(value);
  }

  /** Kelvin per second while heating, losses included. */
  Optional<Estimate> heatingKPerS() {
    double total = seenS(heatingS);
    return total < SHORTEST_S
        ? Optional.empty()
        : fit().map(LeastSquares::a).map(pace -> widened(pace, total));
  }

  /** Kelvin per second while not heating; negative when the pool cools. */
  Optional<Estimate> restingKPerS() {
    double total = seenS(restingS);
    return total < SHORTEST_S
        ? Optional.empty()
        : fit().map(LeastSquares::b).map(pace -> widened(pace, total));
  }

  private static Estimate widened(Estimate pace, double overS) {
    return new Estimate(pace.value(), Math.hypot(pace.standard(), MIXING_K / overS));
  }

  /** How much of some time passed between the first and the last instant that tell the pool, s. */
  private double seenS(double[] elapsedS) {
    int first = first();
    int end = end();
    return first < end ? elapsedS[end - 1] - elapsedS[first] : 0;
  }

  private Optional<LeastSquares> fit() {
    int stride = Math.max(1, (int) Math.round(THINNED_S / timeline.stepS()));
    int most = poolK.length / stride + 1;
    double[] on = new double[most];
    double[] off = new double[most];
    double[] k = new double[most];
    int n = 0;
    for (int i = 0; i < poolK.length; i += stride) {
      if (!Double.isNaN(poolK[i])) {
        on[n] = heatingS[i];
        off[n] = restingS[i];
        k[n++] = poolK[i];
      }
    }
    return LeastSquares.fit(on, off, k, n);
  }
}
