package heatwake.analysis.rule.water;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * The losses of water before which the heater stopped as it should, and what they prove. Timers,
 * backwash and valves stop the water too, so one clean stop and restart accuses nobody; water that
 * stays away from a running pump, or goes again and again, does.
 *
 * @param losses the losses, in order
 * @param isAFault whether they are beyond what is switched on purpose
 */
record LostWater(List<WaterLoss> losses, boolean isAFault) {
  static final String LIMITS =
      "Where the heater stopped as it should, water is called lost if it stays away from a running"
          + " pump for 10 min (for 1 min where flow-total stands too and pump-on is read: no valve that turns"
          + " does that), or for 30 min where the pump was switched off first or its water goes"
          + " on elsewhere (backwash, waste: minutes, common practice), or if it is lost twice, not"
          + " both times by the clock (within 10 min a day or days later: a timer; ours) nor with"
          + " the pump switched off. One shorter loss is only told, as of a cause not known.";

  /** A pump fills its lines and opens the switch within this time; common practice, s. */
  private static final double PRIMES_WITHIN_S = 180;

  /** Shorter losses are a flutter of the reading, s; ours. */
  private static final double SHORTEST_S = 60;

  /**
   * A loss of an hour with the pump's state unknown may be the timer's doing, which the water's
   * coming and going shortens, s; ours.
   */
  private static final double TIMER_FROM_S = 3300;

  /** Valves that turn by themselves let the water go elsewhere for minutes; common practice, s. */
  private static final double VALVE_TURNS_S = 600;

  /** Backwash, rinsing and waste take minutes; common practice, s. */
  private static final double BACKWASH_S = 1800;

  /** Pump and water part at the ends by no more than this, s; ours. */
  private static final double TOGETHER_S = 60;

  /** A timer keeps its times within this, s; ours. */
  private static final double BY_THE_CLOCK_S = 600;

  private static final double DAY_S = 86_400;

  LostWater {
    losses = List.copyOf(losses);
  }

  /** Losses from a pump that ran. */
  static LostWater thoughThePumpRan(Evidence evidence, List<WaterLoss> all) {
    Timeline timeline = evidence.timeline();
    List<WaterLoss> losses =
        all.stream().filter(loss -> pumpRunsWithoutWater(evidence, loss)).toList();
    boolean isLong =
        losses.stream().anyMatch(loss -> loss.durationS(timeline) >= mayTakeS(timeline, loss));
    return new LostWater(losses, isLong || isRepeated(timeline, losses));
  }

  /** Losses under a heating heater after which the water came back. */
  static LostWater andCameBack(Timeline timeline, List<WaterLoss> all) {
    List<WaterLoss> losses =
        all.stream()
            .filter(loss -> lostUnderHeating(timeline, loss))
            .filter(loss -> !isSwitchedOff(timeline, loss))
            .toList();
    return new LostWater(losses, isRepeated(timeline, losses));
  }

  private static boolean pumpRunsWithoutWater(Evidence evidence, WaterLoss loss) {
    if (loss.pump() != WaterLoss.Pump.RAN) {
      return false;
    }
    double seconds = loss.durationS(evidence.timeline());
    double fluttersS = 2 * WaterLosses.slowestIntervalS(evidence.timeline());
    return loss.heatedUntil()
        ? seconds > SHORTEST_S + fluttersS
        : seconds > PRIMES_WITHIN_S + fluttersS
            && HeatCall.over(evidence, loss.stretch().from(), loss.stretch().to()).calls();
  }

  private static boolean lostUnderHeating(Timeline timeline, WaterLoss loss) {
    double seconds = loss.durationS(timeline);
    return loss.heatedUntil()
        && !loss.endsTheRun()
        && loss.pump() != WaterLoss.Pump.STOOD
        && seconds > SHORTEST_S + 2 * WaterLosses.slowestIntervalS(timeline)
        && seconds < TIMER_FROM_S;
  }

  /** How long a loss from a running pump may be on purpose, s. */
  private static double mayTakeS(Timeline timeline, WaterLoss loss) {
    if (isSwitchedOff(timeline, loss) || loss.goesOnElsewhere(timeline)) {
      return BACKWASH_S;
    }
    // No valve that turns stops all water of a running pump.
    return timeline.has(Channel.PUMP_ON) && loss.standsElsewhereToo(timeline) ? 0 : VALVE_TURNS_S;
  }

  /** Whether the pump is seen to stand where the water goes: then that is why. */
  private static boolean isSwitchedOff(Timeline timeline, WaterLoss loss) {
    if (!timeline.has(Channel.PUMP_ON)) {
      return false;
    }
    double[] pump = timeline.of(Channel.PUMP_ON);
    int about = timeline.instants(TOGETHER_S) + 2 * timeline.intervalInstants(Channel.PUMP_ON);
    int to = Math.min(pump.length, loss.stretch().from() + about);
    for (int i = Math.max(0, loss.stretch().from() - about); i < to; i++) {
      if (pump[i] < 0.5) {
        return true;
      }
    }
    return false;
  }

  private static boolean isRepeated(Timeline timeline, List<WaterLoss> losses) {
    List<Double> times = new ArrayList<>();
    for (WaterLoss loss : losses) {
      double atS = loss.stretch().from() * timeline.stepS();
      boolean again = times.stream().anyMatch(before -> isByTheClock(atS - before));
      if (!again && !isSwitchedOff(timeline, loss)) {
        times.add(atS);
      }
    }
    return times.size() > 1;
  }

  private static boolean isByTheClock(double apartS) {
    double days = Math.rint(apartS / DAY_S);
    return days >= 1 && Math.abs(apartS - days * DAY_S) < BY_THE_CLOCK_S;
  }
}
