package heatwake.analysis.steady;

import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.EnteringAir;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/** Which quantities make a span steady, and the spans in which they are. */
public final class SteadySpans {
  private SteadySpans() {}

  /** Steady spans of a run in order of time. Limits are ours. */
  public static List<SteadyFinder.Span> of(
      Timeline timeline, Phases phases, WaterSide water, Electricity electricity) {
    List<Watched> watched = new ArrayList<>();
    boolean flowIsMeasured = water.flow().filter(FlowBasis::isMeasured).isPresent();
    if (flowIsMeasured) {
      water
          .heat()
          .ifPresent(
              heat ->
                  watched.add(
                      Watched.output(heat.heatW(), interval(timeline, Channel.WATER_OUT), 100)));
    }
    if (watched.isEmpty() && water.pair().isPresent()) {
      watched.add(Watched.output(water.riseK(), interval(timeline, Channel.WATER_OUT), 0.05));
    }
    electricity
        .power()
        .ifPresent(
            power ->
                watched.add(
                    Watched.output(
                        power.powerW().values(), interval(timeline, Channel.POWER), 30)));
    if (watched.isEmpty() && timeline.has(Channel.PRESSURE_DISCHARGE)) {
      watched.add(
          Watched.output(
              timeline.of(Channel.PRESSURE_DISCHARGE),
              interval(timeline, Channel.PRESSURE_DISCHARGE),
              10e3));
    }
    condition(timeline, Channel.WATER_IN, 0.2, 1.0, watched);
    condition(timeline, EnteringAir.channel(timeline), 1.0, 3.0, watched);
    return SteadyFinder.of(timeline, inWater(timeline, phases), watched);
  }

  /** The phases with what lies in standing water cut out: nothing is steady there for long. */
  private static List<PhaseSpan> inWater(Timeline timeline, Phases phases) {
    Track moves = WaterMovement.of(timeline);
    List<PhaseSpan> parts = new ArrayList<>();
    for (PhaseSpan span : phases.spans()) {
      int from = timeline.firstAtOrAfter(span.startMs());
      int to = Math.min(moves.size(), timeline.firstAtOrAfter(span.endMs()));
      for (int i = from; i < to; ) {
        int end = i + 1;
        while (end < to && moves.no(end) == moves.no(i)) {
          end++;
        }
        long endMs = end < to ? timeline.timeMs(end) : span.endMs();
        parts.add(new PhaseSpan(moves.no(i) ? Phase.OFF : span.phase(), timeline.timeMs(i), endMs));
        i = end;
      }
    }
    return parts;
  }

  private static void condition(
      Timeline timeline, Channel channel, double shiftK, double driftK, List<Watched> watched) {
    if (!watched.isEmpty() && timeline.has(channel)) {
      watched.add(
          Watched.condition(
              timeline.of(channel), timeline.intervalInstants(channel), shiftK, driftK));
    }
  }

  private static int interval(Timeline timeline, Channel channel) {
    return timeline.has(channel) ? timeline.intervalInstants(channel) : 1;
  }
}
