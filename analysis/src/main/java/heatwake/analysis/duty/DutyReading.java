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
import java.util.OptionalDouble;

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

  /** Less than this part of the expected power is a fan, not a compressor; ours. */
  private static final double FAN_RATIO = 0.15;

  /** Nor is one a compressor that draws less than this part and heats less than the other; ours. */
  private static final double IDLE_POWER_RATIO = 0.35;

  private static final double IDLE_HEAT_RATIO = 0.1;

  /** No heater condenses closer than this above its entering water, K; ours. */
  private static final double LEAST_HEAD_K = 5;

  /** Power of a compressor by its condensing temperature: 2 to 3 % a kelvin; common practice. */
  private static final double POWER_PER_HEAD_K = 0.03;

  private static final double UNKNOWN_LOAD_SHARE = 0.15;

  private final SpanReadings readings;
  private final CircuitDuty circuit;
  private final CoilDuty coil;
  private final Optional<Estimate> standingExcessK;
  private final boolean flowIsAssumed;
  private final OptionalDouble besideW;
  private final Optional<Rating> fullLoad;

  private DutyReading(
      Rig rig,
      Timeline timeline,
      Optional<Estimate> standingExcessK,
      OptionalDouble besideW,
      Optional<FlowKnowledge> flow) {
    this.readings = new SpanReadings(rig, timeline);
    this.standingExcessK = standingExcessK;
    this.besideW = besideW;
    this.flowIsAssumed = flow.filter(known -> known != FlowKnowledge.MEASURED).isPresent();
    this.fullLoad = rig.heater().ratings().stream().max(Comparator.comparingDouble(Rating::heatW));
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
        new DutyReading(
            rig, timeline, RestingCircuit.excessK(rig, timeline, phases), load.watts(), flow);
    List<Duty> found = new ArrayList<>(spans.size());
    for (SteadySpan span : spans) {
      Duty duty = reading.duty(span);
      if (!isFan(duty, rig.heater().beyondFanW())) {
        found.add(duty);
      }
    }
    return List.copyOf(found);
  }

  private static boolean isFan(Duty duty, double beyondFanW) {
    double power = duty.of(DutyFigure.POWER_RATIO).map(Estimate::value).orElse(Double.NaN);
    double heat = duty.of(DutyFigure.HEAT_RATIO).map(Estimate::value).orElse(Double.NaN);
    boolean mayBe =
        duty.of(DutyFigure.POWER).map(Estimate::value).filter(w -> w > beyondFanW).isEmpty();
    return power < FAN_RATIO || (power < IDLE_POWER_RATIO && heat < IDLE_HEAT_RATIO && mayBe);
  }

  private Duty duty(SteadySpan span) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    if (heatIsEvidence(span)) {
      span.heatW().ifPresent(heat -> figures.put(DutyFigure.HEAT, heat));
      putCop(span, figures);
    }
    span.expectedHeatW().ifPresent(heat -> figures.put(DutyFigure.EXPECTED_HEAT, heat));
    powerW(span).ifPresent(power -> figures.put(DutyFigure.POWER, power));
    span.riseK().ifPresent(rise -> figures.put(DutyFigure.RISE, rise));
    span.flowM3PerS().ifPresent(flow -> figures.put(DutyFigure.FLOW, flow));
    span.ratio().ifPresent(ratio -> figures.put(DutyFigure.HEAT_RATIO, ratio));
    putPowerRatio(span, figures);
    putConditions(span, figures);
    circuit.read(span, figures);
    load(figures).ifPresent(load -> figures.put(DutyFigure.LOAD, load));
    putUnexplainedPower(figures);
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

  /** Of the heater alone: without what else is on its meter. */
  private Optional<Estimate> powerW(SteadySpan span) {
    return span.powerW()
        .map(power -> new Estimate(power.value() - besideW.orElse(0), power.standard()));
  }

  private void putPowerRatio(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.powerW().isPresent() && span.expectedPowerW().isPresent()) {
      figures.put(
          DutyFigure.POWER_RATIO, powerW(span).get().dividedBy(span.expectedPowerW().get()));
    }
  }

  private void putCop(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.cop().isPresent()
        && span.expectedHeatW().isPresent()
        && span.expectedPowerW().isPresent()) {
      Estimate expected = span.expectedHeatW().get().dividedBy(span.expectedPowerW().get());
      double alone = powerW(span).orElseThrow().value() / span.powerW().get().value();
      figures.put(DutyFigure.COP_RATIO, span.cop().get().times(1 / alone).dividedBy(expected));
    }
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

  private static void putUnexplainedPower(Map<DutyFigure, Estimate> figures) {
    Estimate power = figures.get(DutyFigure.POWER_RATIO);
    Estimate approach = figures.get(DutyFigure.CONDENSER_APPROACH);
    if (power != null && approach != null) {
      double riseK =
          Optional.ofNullable(figures.get(DutyFigure.RISE))
              .map(Estimate::value)
              .orElse(LEAST_HEAD_K / 2);
      double headK = Math.max(0, approach.value() + riseK - LEAST_HEAD_K);
      figures.put(
          DutyFigure.UNEXPLAINED_POWER_RATIO,
          new Estimate(
              power.value() - POWER_PER_HEAD_K * headK,
              Math.hypot(power.standard(), POWER_PER_HEAD_K * approach.standard())));
    }
  }
}
