package heatwake.analysis.flow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;

/**
 * Whether water really moves through the heater at each instant, by the best evidence there is: a
 * flow meter, else the flow switch, else the pump, else the filter pressure.
 */
public final class WaterMovement {
  /** Less than this counts as standing; ours, well below any heater's least flow. */
  public static final double STANDING_M3_PER_S = 5e-3 / 60;

  /** A filter inlet under this pressure has no pump behind it; ours. */
  public static final double PUMP_OFF_PA = 15e3;

  /** What is known of an instant. */
  public enum State {
    MOVES,
    STANDS,
    UNKNOWN
  }

  private final double[] flowHeater;
  private final double[] flowTotal;
  private final double[] flowSwitch;
  private final double[] pumpOn;
  private final double[] pressureFilter;

  private WaterMovement(Timeline timeline) {
    flowHeater = timeline.of(Channel.FLOW_HEATER);
    flowTotal = timeline.of(Channel.FLOW_TOTAL);
    flowSwitch = timeline.of(Channel.FLOW_SWITCH);
    pumpOn = timeline.of(Channel.PUMP_ON);
    pressureFilter = timeline.of(Channel.PRESSURE_FILTER);
  }

  /** Movement of water over a run. */
  public static WaterMovement of(Timeline timeline) {
    return new WaterMovement(timeline);
  }

  /** What is known of instant {@code i}. */
  public State at(int i) {
    if (!Double.isNaN(flowHeater[i])) {
      return beyond(flowHeater[i], STANDING_M3_PER_S);
    }
    if (!Double.isNaN(flowSwitch[i])) {
      return beyond(flowSwitch[i], 0.5);
    }
    if (!Double.isNaN(flowTotal[i])) {
      return beyond(flowTotal[i], STANDING_M3_PER_S);
    }
    if (!Double.isNaN(pumpOn[i])) {
      return beyond(pumpOn[i], 0.5);
    }
    if (!Double.isNaN(pressureFilter[i])) {
      return beyond(pressureFilter[i], PUMP_OFF_PA);
    }
    return State.UNKNOWN;
  }

  private static State beyond(double value, double limit) {
    return value > limit ? State.MOVES : State.STANDS;
  }
}
