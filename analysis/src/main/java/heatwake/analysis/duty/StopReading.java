package heatwake.analysis.duty;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The high side just before the compressor stops, for a heater that a switch stops before it ever
 * runs steadily. Pipes follow a climbing pressure late, so what it climbed within their lag is the
 * uncertainty of all that is held against it.
 */
public final class StopReading {
  /** The last of the running, s. */
  private static final long LAST_MS = 20_000;

  /** A probe on a pipe has followed after this; common practice. */
  private static final long LAG_MS = 60_000;

  private final Rig rig;
  private final Timeline timeline;

  private StopReading(Rig rig, Timeline timeline) {
    this.rig = rig;
    this.timeline = timeline;
  }

  /** Mean figures over the stops between two instants; empty if there are none. */
  public static Optional<Duty> of(
      Rig rig,
      Timeline timeline,
      List<PhaseSpan> phases,
      List<Cycle> cycles,
      long fromMs,
      long toMs) {
    Optional<Estimate> standing = RestingCircuit.excessK(rig, timeline, phases);
    StopReading reading = new StopReading(rig, timeline);
    List<Duty> stops = new ArrayList<>();
    for (Cycle cycle : cycles) {
      if (cycle.stopMs().isPresent()
          && cycle.stopMs().getAsLong() >= fromMs
          && cycle.stopMs().getAsLong() <= toMs) {
        stops.add(reading.at(cycle, standing));
      }
    }
    return stops.isEmpty() ? Optional.empty() : Optional.of(Duty.meanOf(stops));
  }

  private Duty at(Cycle cycle, Optional<Estimate> standing) {
    long stopMs = cycle.stopMs().orElseThrow();
    long fromMs = Math.max(cycle.startMs(), stopMs - LAST_MS);
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    standing.ifPresent(excess -> figures.put(DutyFigure.STANDING_EXCESS, excess));
    timeline
        .meanBetween(Channel.FLOW_HEATER, fromMs, stopMs)
        .ifPresent(
            flow ->
                figures.put(
                    DutyFigure.FLOW,
                    new Estimate(flow, ProbeUncertainty.of(rig, Channel.FLOW_HEATER).at(flow))));
    rig.heater()
        .refrigerant()
        .ifPresent(
            one ->
                putHighSide(
                    one, Math.max(cycle.startMs(), fromMs - LAG_MS), fromMs, stopMs, figures));
    return new Duty(fromMs, stopMs, figures);
  }

  private void putHighSide(
      Refrigerant refrigerant,
      long beforeMs,
      long fromMs,
      long stopMs,
      Map<DutyFigure, Estimate> figures) {
    Saturation saturation = Saturation.of(refrigerant);
    Optional<AbsolutePressure> now = pressure(saturation, fromMs, stopMs);
    Optional<AbsolutePressure> before = pressure(saturation, beforeMs, beforeMs + LAST_MS);
    if (now.isEmpty() || before.isEmpty()) {
      return;
    }
    double bubbleK = saturation.bubbleTemperatureK(now.get());
    double dewK = saturation.dewTemperatureK(now.get());
    double climbK = Math.abs(bubbleK - saturation.bubbleTemperatureK(before.get()));
    figures.put(DutyFigure.CONDENSING, new Estimate(dewK, climbK));
    double meanK = dewK - Glide.of(refrigerant).belowCondensingK(dewK);
    put(DutyFigure.CONDENSER_APPROACH, meanK, Channel.WATER_OUT, climbK, fromMs, stopMs, figures);
    put(DutyFigure.SUBCOOLING, bubbleK, Channel.TEMP_LIQUID, climbK, fromMs, stopMs, figures);
    OptionalDouble liquid = timeline.meanBetween(Channel.TEMP_LIQUID, fromMs, stopMs);
    OptionalDouble water = timeline.meanBetween(Channel.WATER_IN, fromMs, stopMs);
    if (liquid.isPresent() && water.isPresent()) {
      LiquidEnd.share(
              Estimate.exact(bubbleK),
              new Estimate(liquid.getAsDouble(), climbK),
              Estimate.exact(water.getAsDouble()))
          .ifPresent(share -> figures.put(DutyFigure.SUBCOOLING_SHARE, share));
    }
  }

  private void put(
      DutyFigure figure,
      double saturatedK,
      Channel pipe,
      double climbK,
      long fromMs,
      long stopMs,
      Map<DutyFigure, Estimate> figures) {
    timeline
        .meanBetween(pipe, fromMs, stopMs)
        .ifPresent(pipeK -> figures.put(figure, new Estimate(saturatedK - pipeK, climbK)));
  }

  private Optional<AbsolutePressure> pressure(Saturation saturation, long fromMs, long toMs) {
    OptionalDouble gauge = timeline.meanBetween(Channel.PRESSURE_DISCHARGE, fromMs, toMs);
    if (gauge.isEmpty()) {
      return Optional.empty();
    }
    double pa = gauge.getAsDouble() + Atmosphere.standard(rig.site().altitudeM()).pa();
    boolean within =
        pa > saturation.dewPressure(Saturation.LOWEST_K).pa()
            && pa < saturation.dewPressure(saturation.highestK() - 1).pa();
    return within ? Optional.of(new AbsolutePressure(pa)) : Optional.empty();
  }
}
