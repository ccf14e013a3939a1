package heatwake.analysis.startup;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;

/** Whether the probes of a run can tell the flow through the heater. */
final class HeaterFlowProbes {
  static final String MISSING =
      "no reading that gives the flow through the heater; clip flow-heater, or flow-total and"
          + " water-return";

  private HeaterFlowProbes() {}

  /** A meter in the heater's own water, or all water and the temperature it mixes to. */
  static boolean areThere(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    boolean allWater =
        timeline.has(Channel.FLOW_TOTAL)
            || (timeline.has(Channel.PRESSURE_FILTER)
                && !evidence.recording().rig().pumpCurve().isEmpty());
    boolean share =
        timeline.has(Channel.WATER_IN)
            && timeline.has(Channel.WATER_OUT)
            && timeline.has(Channel.WATER_RETURN);
    return timeline.has(Channel.FLOW_HEATER) || (allWater && share);
  }
}
