package heatwake.analysis.rule.water;

import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * A pump that is seen to stop again and again for minutes under a heater that heats and is called
 * for: its motor's protection trips and resets, or a contact in its supply is loose. A timer stops
 * it for longer, and a person not so often.
 */
final class PumpCutsOut {
  static final String LIMITS =
      "A pump seen to stop is raised from the third time within 6 h on, counted after the first hour:"
          + " each time between 1 and 15 min, the heater heating until then, and the water 0.5 K or more"
          + " below the set temperature beyond doubt (timers switch in steps of a quarter of an hour:"
          + " common practice; ours).";

  /** Shorter stops are a flutter of the reading, s; ours. */
  private static final double SHORTEST_S = 60;

  /** Timers switch in steps of a quarter of an hour; common practice, s. */
  private static final double TIMER_FROM_S = 900;

  /** So many stops are no person's doing; ours. */
  private static final int STOPS = 3;

  private static final double WITHIN_S = 6 * 3600;

  /** In the first hour of a run somebody is there and may be testing, s; ours. */
  private static final double SOMEBODY_THERE_S = 3600;

  /** The water is read over so long before a stop, s; ours. */
  private static final double BEFORE_S = 300;

  private final Evidence evidence;
  private final Timeline timeline;

  private PumpCutsOut(Evidence evidence) {
    this.evidence = evidence;
    this.timeline = evidence.timeline();
  }

  /** Its stops; none where they may have another reason. */
  static List<WaterLoss> in(Evidence evidence, List<WaterLoss> losses) {
    PumpCutsOut seen = new PumpCutsOut(evidence);
    List<WaterLoss> stops = losses.stream().filter(seen::isOne).toList();
    for (int first = 0; first + STOPS <= stops.size(); first++) {
      if (seen.atS(stops.get(first + STOPS - 1)) - seen.atS(stops.get(first)) <= WITHIN_S) {
        return stops;
      }
    }
    return List.of();
  }

  private boolean isOne(WaterLoss loss) {
    double seconds = loss.durationS(timeline);
    return loss.pump() == WaterLoss.Pump.STOOD
        && loss.heatedUntil()
        && !loss.endsTheRun()
        && atS(loss) >= SOMEBODY_THERE_S
        && seconds > SHORTEST_S + 2 * WaterLosses.slowestIntervalS(timeline)
        && seconds < TIMER_FROM_S
        && callBefore(loss).calls();
  }

  private double atS(WaterLoss loss) {
    return loss.stretch().from() * timeline.stepS();
  }

  private HeatCall callBefore(WaterLoss loss) {
    int from = loss.stretch().from();
    return HeatCall.over(evidence, Math.max(0, from - timeline.instants(BEFORE_S)), from);
  }
}
