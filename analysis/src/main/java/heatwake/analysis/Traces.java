package heatwake.analysis;

import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/** Derived quantities over time, for charts. */
final class Traces {
  private Traces() {}

  static List<Trace> of(Timeline timeline, WaterSide water, Circuit circuit) {
    List<Trace> traces = new ArrayList<>();
    water.heat().ifPresent(heat -> traces.add(trace(Trace.Kind.HEAT, timeline, heat.heatW())));
    if (water.pair().isPresent()) {
      traces.add(trace(Trace.Kind.RISE, timeline, water.riseK()));
    }
    water
        .heaterFlowTrace()
        .ifPresent(flow -> traces.add(trace(Trace.Kind.HEATER_FLOW, timeline, flow)));
    water
        .share()
        .ifPresent(share -> traces.add(trace(Trace.Kind.HEATER_SHARE, timeline, share.trace())));
    if (recorded(circuit.condensingK())) {
      traces.add(trace(Trace.Kind.CONDENSING, timeline, circuit.condensingK()));
    }
    if (recorded(circuit.evaporatingK())) {
      traces.add(trace(Trace.Kind.EVAPORATING, timeline, circuit.evaporatingK()));
    }
    return traces;
  }

  private static boolean recorded(double[] values) {
    for (double value : values) {
      if (!Double.isNaN(value)) {
        return true;
      }
    }
    return false;
  }

  private static Trace trace(Trace.Kind kind, Timeline timeline, double[] values) {
    return new Trace(kind, timeline.startMs(), timeline.stepMs(), values);
  }
}
