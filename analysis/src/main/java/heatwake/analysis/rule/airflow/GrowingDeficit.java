package heatwake.analysis.rule.airflow;

import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * Air at the coil that sinks away from outdoor air over hours of running, as where a shed or a yard
 * fills with the heater's own cold air. The first half-hour of running is the reference, so the
 * errors of the two probes drop out.
 *
 * <p>Told from what looks alike: with sun on the outdoor probe that one rises, while here the inlet
 * has to fall by most of it; on a wall that is still warm in the evening the outdoor probe falls
 * late, while here it must not fall by much; a probe that slips has no witness.
 *
 * @param before how far below outdoor air the inlet was in the first half-hour, K
 * @param worst the hour in which it was furthest below
 */
record GrowingDeficit(double before, AirDeficit worst) {
  private static final long FIRST_MS = 1_800_000;
  private static final long HOUR_MS = 3_600_000;
  private static final long STEP_MS = 600_000;

  /** Half of a stretch makes its mean, s; ours. */
  private static final double SHORTEST_S = 900;

  /**
   * Of the growth the inlet's fall makes at least the first, the outdoor air's at most the other.
   */
  private static final double INLET_SHARE = 0.5;

  private static final double OUTDOORS_SHARE = 0.25;

  /**
   * The worst hour, if it is one.
   *
   * @param settled running
   * @param leastK growth that sun, shade and walls do not make, K
   */
  static Optional<GrowingDeficit> of(Evidence evidence, SettledInstants settled, double leastK) {
    Timeline timeline = evidence.timeline();
    long beganMs = settled.firstMs();
    long endMs = timeline.timeMs(timeline.size() - 1);
    return AirDeficit.between(timeline, settled, SHORTEST_S, beganMs, beganMs + FIRST_MS)
        .flatMap(
            first ->
                LongStream.iterate(
                        beganMs + FIRST_MS, from -> from + HOUR_MS <= endMs, from -> from + STEP_MS)
                    .mapToObj(
                        from ->
                            AirDeficit.between(timeline, settled, SHORTEST_S, from, from + HOUR_MS))
                    .flatMap(Optional::stream)
                    .max(Comparator.comparingDouble(hour -> hour.belowK().value()))
                    .filter(worst -> isFurther(evidence, first, worst, leastK))
                    .filter(worst -> new ColderAirWitness(evidence, settled).agrees(first, worst))
                    .map(worst -> new GrowingDeficit(first.belowK().value(), worst)));
  }

  private static boolean isFurther(
      Evidence evidence, AirDeficit first, AirDeficit worst, double leastK) {
    // Air warmer than outdoors by more than the probes err is warm air of the place: then outdoor
    // air is the reference.
    double warmestK = -2 * AirProbes.standardK(evidence, first.inletK());
    double growthK = worst.belowK().value() - Math.max(first.belowK().value(), warmestK);
    Estimate growth =
        new Estimate(
            growthK,
            Math.hypot(
                SuddenDeficit.WANDER_K,
                Math.hypot(first.belowK().standard(), worst.belowK().standard())));
    return growthK > leastK
        && Doubt.above(growth, 0)
        && worst.belowK().value() > 0
        && first.inletK() - worst.inletK() > INLET_SHARE * growthK
        && first.outdoorK() - worst.outdoorK() < OUTDOORS_SHARE * growthK;
  }
}
