package heatwake.analysis.duty;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.expected.EnteringAir;
import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the duty of a heater off its steady spans and the readings beneath them. */
public final class DutyReading {
  private static final double ICE_POINT_K = 273.15;

  /**
   * Capacity of an air-source heat pump by its entering air: about 2 % a kelvin around 27 Cel;
   * common practice. Only used where neither heat nor nameplate says more.
   */
  private static final double LOAD_PER_K = 0.02;

  private static final double LOAD_AIR_K = ICE_POINT_K + 27;
  private static final double LEAST_LOAD = 0.4;
  private static final double GREATEST_LOAD = 1.4;

  private static final double UNKNOWN_LOAD_SHARE = 0.15;

  private final SpanReadings readings;
  private final PowerDuty power;
  private final CircuitDuty circuit;
  private final CoilDuty coil;
  private final Optional<Estimate> standingExcessK;
  private final boolean flowIsAssumed;
  private final Optional<Rating> fullLoad;

  private DutyReading(
      Rig rig,
      Timeline timeline,
      Optional<Estimate> standingExcessK,
      MeterLoad load,
      Optional<FlowKnowledge> flow) {
    this.readings = new SpanReadings(rig, timeline);
    this.standingExcessK = standingExcessK;
    this.flowIsAssumed = flow.filter(known -> known != FlowKnowledge.MEASURED).isPresent();
    this.fullLoad = rig.heater().ratings().stream().max(Comparator.comparingDouble(Rating::heatW));
    this.power = new PowerDuty(load.watts());
    this.circuit = new CircuitDuty(readings, rig.heater().refrigerant().map(Glide::of));
    this.coil = new CoilDuty(fullLoad, Atmosphere.standard(rig.site().altitudeM()));
  }

  /**
   * One duty for each steady span in which the compressor does run, in order. A fan alone may be
   * taken for it where little is measured; its power gives it away.
   *
   * @param load what else is on the heater's meter
   */
  public static List<Duty> of(
      Rig rig,
      Timeline timeline,
      List<PhaseSpan> phases,
      List<SteadySpan> spans,
      Optional<FlowKnowledge> flow,
      MeterLoad load) {
    DutyReading reading =
        new DutyReading(rig, timeline, RestingCircuit.excessK(rig, timeline, phases), load, flow);
    List<Duty> found = new ArrayList<>(spans.size());
    for (SteadySpan span : spans) {
      Duty duty = reading.duty(span);
      if (!PowerDuty.isFans(duty, rig.heater().beyondFanW())) {
        found.add(duty);
      }
    }
    return List.copyOf(found);
  }

  private Duty duty(SteadySpan span) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    if (heatIsEvidence(span)) {
      span.heatW().ifPresent(heat -> figures.put(DutyFigure.HEAT, heat));
      power.readCop(span, figures);
    }
    span.expectedHeatW().ifPresent(heat -> figures.put(DutyFigure.EXPECTED_HEAT, heat));
    span.riseK().ifPresent(rise -> figures.put(DutyFigure.RISE, rise));
    span.flowM3PerS().ifPresent(flow -> figures.put(DutyFigure.FLOW, flow));
    span.ratio().ifPresent(ratio -> figures.put(DutyFigure.HEAT_RATIO, ratio));
    power.read(span, figures);
    putConditions(span, figures);
    circuit.read(span, figures);
    load(figures).ifPresent(load -> figures.put(DutyFigure.LOAD, load));
    PowerDuty.putUnexplained(figures);
    coil.read(figures);
    standingExcessK.ifPresent(excess -> figures.put(DutyFigure.STANDING_EXCESS, excess));
    return new Duty(span.startMs(), span.endMs(), figures);
  }

  /**
   * An assumed flow makes a heat that says nothing of the heater, unless it is too little at every
   * flow that is possible: only then does it have a ratio.
   */
  private boolean heatIsEvidence(SteadySpan span) {
    return !flowIsAssumed || span.ratio().isPresent();
  }

  private void putConditions(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    readings
        .temperature(Channel.WATER_IN, span)
        .ifPresent(water -> figures.put(DutyFigure.WATER_IN, water));
    readings
        .mean(Channel.HUMIDITY_IN, span)
        .ifPresent(
            humidity ->
                figures.put(
                    DutyFigure.HUMIDITY,
                    new Estimate(humidity, readings.standard(Channel.HUMIDITY_IN, humidity))));
    readings.enteringAir(span).ifPresent(air -> putAir(air, span, figures));
  }

  private void putAir(EnteringAir air, SteadySpan span, Map<DutyFigure, Estimate> figures) {
    figures.put(DutyFigure.AIR, air.temperatureK());
    readings
        .temperature(Channel.TEMP_SUCTION, span)
        .ifPresent(
            suction -> figures.put(DutyFigure.SUCTION_EXCESS, suction.minus(air.temperatureK())));
    // What errs in the entering air would count twice, in the approach and in the air's cooling.
    if (readings.timeline().has(Channel.AIR_IN) && air.warmerByK() == 0) {
      readings
          .temperature(Channel.AIR_OUT, span)
          .ifPresent(out -> figures.put(DutyFigure.AIR_DROP, air.temperatureK().minus(out)));
    }
  }

  private Optional<Estimate> load(Map<DutyFigure, Estimate> figures) {
    Optional<Estimate> heat = CredibleHeat.of(figures).filter(one -> one.value() > 0);
    if (fullLoad.isPresent() && heat.isPresent()) {
      return Optional.of(heat.get().times(1 / fullLoad.get().heatW()));
    }
    return Optional.ofNullable(figures.get(DutyFigure.AIR))
        .map(air -> 1 + LOAD_PER_K * (air.value() - LOAD_AIR_K))
        .map(load -> Math.max(LEAST_LOAD, Math.min(GREATEST_LOAD, load)))
        .map(load -> new Estimate(load, UNKNOWN_LOAD_SHARE * load));
  }
}
