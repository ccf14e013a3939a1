package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * What the refrigerant pressures say of the compressor. At rest high and low side level out; a
 * running compressor holds them apart. With the high side alone its quick rises and falls are
 * judged.
 */
final class RefrigerantLift {
  /**
   * A run whose lift never passes this has no running compressor in it that pressures could show.
   */
  private static final double LEAST_LIFT_PA = 200e3;

  /** On from this share of the run's full lift (ours). */
  private static final double ON_SHARE = 0.25;

  private final double[] pascals;
  private final double full;
  private final Track compressor;
  private final boolean ofBothSides;

  private RefrigerantLift(double[] pascals, double full, Track compressor, boolean ofBothSides) {
    this.pascals = pascals;
    this.full = full;
    this.compressor = compressor;
    this.ofBothSides = ofBothSides;
  }

  /** High side minus low side, or the high side over its lowest level, Pa; NaN where not known. */
  double[] pascals() {
    return pascals;
  }

  /** The highest lift that was held, Pa. */
  double full() {
    return full;
  }

  /** Whether the compressor runs, as far as the lift tells. */
  Track compressor() {
    return compressor;
  }

  /** Whether both sides are measured. */
  boolean ofBothSides() {
    return ofBothSides;
  }

  /** Reads the lift off a timeline; empty without the high side. */
  static Optional<RefrigerantLift> of(Timeline timeline) {
    if (!timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return Optional.empty();
    }
    boolean ofBothSides = timeline.has(Channel.PRESSURE_SUCTION);
    double[] lift = lift(timeline);
    double full = full(lift, timeline.stepMs());
    Track compressor = new Track(lift.length);
    if (full > LEAST_LIFT_PA) {
      compressor =
          ofBothSides
              ? heldApart(lift, full, timeline.stepMs())
              : HighSideSteps.compressor(lift, full, timeline.stepMs());
    }
    return Optional.of(new RefrigerantLift(lift, full, compressor, ofBothSides));
  }

  /** Whether it ever tells of a running compressor. */
  boolean lifts() {
    return compressor.everYes();
  }

  private static Track heldApart(double[] lift, double full, long stepMs) {
    Track on = new Track(lift.length);
    HeldLift held = new HeldLift(stepMs);
    boolean running = false;
    for (int i = 0; i < lift.length; i++) {
      double now = lift[i];
      if (Double.isNaN(now)) {
        continue;
      }
      boolean holds = held.holds(now);
      if (running) {
        running = holds && now >= 0.5 * ON_SHARE * full;
      } else if (now >= ON_SHARE * full && isRising(lift, i, stepMs, full)) {
        running = true;
        held.begin(now);
      }
      on.set(i, running ? Track.YES : Track.NO);
    }
    return on;
  }

  private static double full(double[] lift, long stepMs) {
    LevelHistogram levels = LevelHistogram.of(lift);
    return levels.highestHeld((int) Math.max(1, Math.max(60_000 / stepMs, levels.total() / 500)));
  }

  private static double[] lift(Timeline timeline) {
    double[] high = timeline.of(Channel.PRESSURE_DISCHARGE);
    double[] lift = new double[high.length];
    if (timeline.has(Channel.PRESSURE_SUCTION)) {
      double[] low = timeline.of(Channel.PRESSURE_SUCTION);
      for (int i = 0; i < lift.length; i++) {
        lift[i] = high[i] - low[i];
      }
      return lift;
    }
    double standing = LevelHistogram.of(high).quantile(0.002);
    for (int i = 0; i < lift.length; i++) {
      lift[i] = high[i] - standing;
    }
    return lift;
  }

  /** Not on the way down: a lift that is bleeding off after a stop is no start. */
  private static boolean isRising(double[] lift, int i, long stepMs, double full) {
    int back = (int) Math.max(1, 20_000 / stepMs);
    int before = Math.max(0, i - back);
    return Double.isNaN(lift[before]) || lift[i] >= lift[before] - 0.02 * full;
  }
}
