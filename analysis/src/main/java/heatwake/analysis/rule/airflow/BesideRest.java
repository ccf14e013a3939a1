package heatwake.analysis.rule.airflow;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * The air at the coil's inlet while the heater runs beside the same at rest. Two probes' errors are
 * the same in both, so they drop out; the shorter the rest, the more is left to gusts, clouds and
 * probes that have not settled.
 *
 * @param running how far it lies below outdoor air while the heater runs
 * @param rest the same at rest
 * @param isFurther whether it is further beyond doubt, and by enough to matter
 */
record BesideRest(AirDeficit running, AirDeficit rest, boolean isFurther) {
  /** Shade and sun shift two air probes against each other by this in a day; ours. */
  private static final double WANDER_K = 0.4;

  /** A rest of a minute tells too, if an air probe has had its time; common practice, s. */
  private static final double SHORT_REST_S = 60;

  private static final int FEWEST_READINGS = 3;

  /** Over a minute gusts and a cloud shift two air probes by this; ours. */
  private static final double WANDER_AT_SHORT_REST_K = 1.0;

  /**
   * A glance at the rest, as before a heater that is on already starts again: one look, s; ours.
   */
  private static final double GLANCE_S = 1;

  /** Probes that were clipped on a moment ago may read apart by this then; ours. */
  private static final double WANDER_AT_A_GLANCE_K = 1.5;

  /** The running that is compared with a short rest by itself: before the sun goes on; ours. */
  private static final long SOON_AFTER_MS = 1_800_000;

  /**
   * Beside the longest rest that there is; empty where none was seen, or too little running soon
   * after a short one.
   */
  static Optional<BesideRest> of(Evidence evidence, SettledInstants runs, AirDeficit running) {
    Timeline timeline = evidence.timeline();
    // While only the fan runs nothing is cooled, so that counts as rest; with fan and water
    // standing the coil may hang in warm air of its own.
    SettledInstants rests =
        SettledInstants.of(evidence, phase -> phase == Phase.CIRCULATING || phase == Phase.OFF);
    return AirDeficit.of(timeline, rests, AirRecirculation.SHORTEST_S)
        .map(rest -> new BesideRest(running, rest, isFurther(running, rest, WANDER_K)))
        .or(
            () ->
                AirDeficit.of(timeline, rests, SHORT_REST_S)
                    .filter(rest -> rest.readings() >= FEWEST_READINGS)
                    .flatMap(rest -> soon(timeline, runs, running, rest, WANDER_AT_SHORT_REST_K)))
        .or(
            () ->
                AirDeficit.of(timeline, rests, GLANCE_S)
                    .flatMap(rest -> soon(timeline, runs, running, rest, WANDER_AT_A_GLANCE_K)));
  }

  /** Against a short rest all of the running has to tell, and the first of it alone as well. */
  private static Optional<BesideRest> soon(
      Timeline timeline,
      SettledInstants runs,
      AirDeficit running,
      AirDeficit rest,
      double wanderK) {
    long untilMs = rest.endMs() + SettledInstants.SETTLING_MS + SOON_AFTER_MS;
    return AirDeficit.between(timeline, runs, AirRecirculation.SHORTEST_S, rest.endMs(), untilMs)
        .map(
            first ->
                new BesideRest(
                    running,
                    rest,
                    isFurther(first, rest, wanderK) && isFurther(running, rest, wanderK)));
  }

  private static boolean isFurther(AirDeficit running, AirDeficit rest, double wanderK) {
    Estimate more =
        new Estimate(
            running.belowK().value() - rest.belowK().value(),
            Math.hypot(wanderK, Math.hypot(running.belowK().standard(), rest.belowK().standard())));
    return Doubt.above(more, 0)
        && more.value() > AirRecirculation.MATERIAL_K
        && running.belowK().value() > 0;
  }
}
