package heatwake.analysis.duty;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
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
  private static final double STANDARD_ATMOSPHERE_PA = 101_325;

  /**
   * Relative change of saturation pressure per kelvin, the least of the refrigerants met here up to
   * a condensing temperature of 60 Cel (R-410A, Clausius-Clapeyron: L/(R T2)); it turns the
   * uncertainty of a pressure into one of a saturation temperature without flattering it.
   */
  public static final double SATURATION_SLOPE_PER_K = 0.021;

  /** Standard uncertainty of a saturation temperature from the property equations, K; ours. */
  private static final double SATURATION_MODEL_K = 0.1;

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

  /** Heat below this part of the expected is no measure of how hard exchangers work; ours. */
  private static final double LEAST_CREDIBLE_SHARE = 0.3;

  /** Humidity where it is not measured; its standard uncertainty spans dry and foggy weather. */
  private static final Estimate UNKNOWN_HUMIDITY = new Estimate(0.65, 0.15);

  /** Part of the electric power that ends up in the water; the rest warms the air; ours. */
  private static final double POWER_TO_WATER = 0.95;

  /** Part of the heat that comes from the air where power is not known; COP 5 +- 1. */
  private static final Estimate FROM_AIR = new Estimate(0.8, 0.04);

  /** No heater condenses closer than this above its entering water, K; ours. */
  private static final double LEAST_HEAD_K = 5;

  /** Power of a compressor by its condensing temperature: 2 to 3 % a kelvin; common practice. */
  private static final double POWER_PER_HEAD_K = 0.03;

  private static final double UNKNOWN_LOAD_SHARE = 0.15;

  private final Rig rig;
  private final Timeline timeline;
  private final Optional<Estimate> standingExcessK;
  private final boolean flowIsAssumed;
  private final Optional<Glide> glide;
  private final AbsolutePressure atmosphere;
  private final Optional<Rating> fullLoad;

  private DutyReading(
      Rig rig,
      Timeline timeline,
      Optional<Estimate> standingExcessK,
      Optional<FlowKnowledge> flow) {
    this.rig = rig;
    this.timeline = timeline;
    this.standingExcessK = standingExcessK;
    this.flowIsAssumed = flow.filter(known -> known != FlowKnowledge.MEASURED).isPresent();
    this.glide = rig.heater().refrigerant().map(Glide::of);
    this.atmosphere = Atmosphere.standard(rig.site().altitudeM());
    this.fullLoad = rig.heater().ratings().stream().max(Comparator.comparingDouble(Rating::heatW));
  }

  /**
   * One duty for each steady span in which the compressor does run, in order. A fan alone may be
   * taken for it where little is measured; its power gives it away.
   */
  public static List<Duty> of(
      Rig rig,
      Timeline timeline,
      List<PhaseSpan> phases,
      List<SteadySpan> spans,
      Optional<FlowKnowledge> flow) {
    DutyReading reading =
        new DutyReading(rig, timeline, RestingCircuit.excessK(rig, timeline, phases), flow);
    List<Duty> found = new ArrayList<>(spans.size());
    for (SteadySpan span : spans) {
      Duty duty = reading.duty(span);
      if (duty.of(DutyFigure.POWER_RATIO).filter(p -> p.value() < FAN_RATIO).isEmpty()) {
        found.add(duty);
      }
    }
    return List.copyOf(found);
  }

  private Duty duty(SteadySpan span) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    if (heatIsEvidence(span)) {
      span.heatW().ifPresent(heat -> figures.put(DutyFigure.HEAT, heat));
      putCop(span, figures);
    }
    span.expectedHeatW().ifPresent(heat -> figures.put(DutyFigure.EXPECTED_HEAT, heat));
    span.powerW().ifPresent(power -> figures.put(DutyFigure.POWER, power));
    span.riseK().ifPresent(rise -> figures.put(DutyFigure.RISE, rise));
    span.flowM3PerS().ifPresent(flow -> figures.put(DutyFigure.FLOW, flow));
    span.ratio().ifPresent(ratio -> figures.put(DutyFigure.HEAT_RATIO, ratio));
    putPowerRatio(span, figures);
    putConditions(span, figures);
    putRefrigerant(span, figures);
    load(figures).ifPresent(load -> figures.put(DutyFigure.LOAD, load));
    putUnexplainedPower(figures);
    putCoil(figures);
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

  private static void putPowerRatio(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.powerW().isPresent() && span.expectedPowerW().isPresent()) {
      figures.put(
          DutyFigure.POWER_RATIO, span.powerW().get().dividedBy(span.expectedPowerW().get()));
    }
  }

  private static void putCop(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.cop().isPresent()
        && span.expectedHeatW().isPresent()
        && span.expectedPowerW().isPresent()) {
      Estimate expected = span.expectedHeatW().get().dividedBy(span.expectedPowerW().get());
      figures.put(DutyFigure.COP_RATIO, span.cop().get().dividedBy(expected));
    }
  }

  private void putConditions(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    putTemperature(DutyFigure.WATER_IN, span.waterInK(), Channel.WATER_IN, figures);
    putTemperature(DutyFigure.AIR, span.airK(), airChannel(), figures);
    double humidity =
        timeline.meanBetween(Channel.HUMIDITY_IN, span.startMs(), span.endMs()).orElse(Double.NaN);
    if (!Double.isNaN(humidity)) {
      figures.put(
          DutyFigure.HUMIDITY, new Estimate(humidity, uncertainty(Channel.HUMIDITY_IN, humidity)));
    }
    OptionalDouble in = timeline.meanBetween(Channel.AIR_IN, span.startMs(), span.endMs());
    OptionalDouble out = timeline.meanBetween(Channel.AIR_OUT, span.startMs(), span.endMs());
    if (in.isPresent() && out.isPresent()) {
      figures.put(
          DutyFigure.AIR_DROP,
          new Estimate(
              in.getAsDouble() - out.getAsDouble(),
              Math.hypot(
                  temperatureUncertaintyK(Channel.AIR_IN, in.getAsDouble()),
                  temperatureUncertaintyK(Channel.AIR_OUT, out.getAsDouble()))));
    }
  }

  private void putRefrigerant(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    double condensingU = saturationUncertaintyK(Channel.PRESSURE_DISCHARGE, span);
    double evaporatingU = saturationUncertaintyK(Channel.PRESSURE_SUCTION, span);
    put(DutyFigure.CONDENSING, span.condensingK(), condensingU, figures);
    put(DutyFigure.EVAPORATING, span.evaporatingK(), evaporatingU, figures);
    put(
        DutyFigure.CONDENSER_APPROACH,
        lessGlide(span.condenserApproachK(), span.condensingK()),
        Math.hypot(condensingU, pipeUncertaintyK(Channel.WATER_OUT, span)),
        figures);
    put(
        DutyFigure.EVAPORATOR_APPROACH,
        plusGlide(span.evaporatorApproachK(), span.evaporatingK()),
        Math.hypot(evaporatingU, pipeUncertaintyK(airChannel(), span)),
        figures);
    put(
        DutyFigure.SUPERHEAT,
        span.superheatK(),
        Math.hypot(evaporatingU, pipeUncertaintyK(Channel.TEMP_SUCTION, span)),
        figures);
    put(
        DutyFigure.SUBCOOLING,
        span.subcoolingK(),
        Math.hypot(condensingU, pipeUncertaintyK(Channel.TEMP_LIQUID, span)),
        figures);
    OptionalDouble discharge =
        timeline.meanBetween(Channel.TEMP_DISCHARGE, span.startMs(), span.endMs());
    if (discharge.isPresent() && span.condensingK().isPresent()) {
      figures.put(
          DutyFigure.DISCHARGE_SUPERHEAT,
          new Estimate(
              discharge.getAsDouble() - span.condensingK().getAsDouble(),
              Math.hypot(condensingU, pipeUncertaintyK(Channel.TEMP_DISCHARGE, span))));
    }
  }

  private OptionalDouble lessGlide(OptionalDouble approachK, OptionalDouble condensingK) {
    return approachK.isPresent() && condensingK.isPresent()
        ? OptionalDouble.of(
            approachK.getAsDouble()
                - glide.map(one -> one.belowCondensingK(condensingK.getAsDouble())).orElse(0.0))
        : approachK;
  }

  private OptionalDouble plusGlide(OptionalDouble approachK, OptionalDouble evaporatingK) {
    return approachK.isPresent() && evaporatingK.isPresent()
        ? OptionalDouble.of(
            approachK.getAsDouble()
                + glide.map(one -> one.belowEvaporatingK(evaporatingK.getAsDouble())).orElse(0.0))
        : approachK;
  }

  private Optional<Estimate> load(Map<DutyFigure, Estimate> figures) {
    Estimate heat = credibleHeatW(figures);
    if (fullLoad.isPresent() && heat != null && heat.value() > 0) {
      return Optional.of(heat.times(1 / fullLoad.get().heatW()));
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

  private void putCoil(Map<DutyFigure, Estimate> figures) {
    Estimate air = figures.get(DutyFigure.AIR);
    Estimate approach = figures.get(DutyFigure.EVAPORATOR_APPROACH);
    Estimate load = figures.get(DutyFigure.LOAD);
    if (air == null || load == null) {
      return;
    }
    Optional<Estimate> fromAir = fromAirW(figures);
    Optional<Double> ratedFromAir =
        fullLoad.map(rating -> rating.heatW() - POWER_TO_WATER * ratedPowerW(rating));
    if (approach != null) {
      Estimate share =
          fromAir.isPresent() && ratedFromAir.isPresent()
              ? fromAir.get().times(1 / ratedFromAir.get())
              : load;
      figures.put(
          DutyFigure.STANDARD_APPROACH,
          new CoilState(
                  Estimate.exact(air.value()),
                  figures.getOrDefault(DutyFigure.HUMIDITY, UNKNOWN_HUMIDITY),
                  new Estimate(air.value() - approach.value(), approach.standard()),
                  share,
                  atmosphere)
              .standardApproachK());
    }
    Estimate drop = figures.get(DutyFigure.AIR_DROP);
    Estimate humidity = figures.get(DutyFigure.HUMIDITY);
    if (fromAir.isPresent() && drop != null && humidity != null && fullLoad.isPresent()) {
      CoilAir.kgPerS(fromAir.get(), air.value(), drop, humidity.value(), atmosphere)
          .ifPresent(
              flow -> figures.put(DutyFigure.AIR_FLOW, flow.times(1 / fullLoad.get().heatW())));
    }
  }

  private static double ratedPowerW(Rating rating) {
    return rating.powerW().orElse((1 - FROM_AIR.value()) * rating.heatW() / POWER_TO_WATER);
  }

  /** Measured heat, unless it is so little that the probes or the compressor must be at fault. */
  private static Estimate credibleHeatW(Map<DutyFigure, Estimate> figures) {
    Estimate heat = figures.get(DutyFigure.HEAT);
    Estimate expected = figures.get(DutyFigure.EXPECTED_HEAT);
    boolean credible =
        heat != null
            && (expected == null || heat.value() > LEAST_CREDIBLE_SHARE * expected.value());
    return credible ? heat : expected;
  }

  private static Optional<Estimate> fromAirW(Map<DutyFigure, Estimate> figures) {
    Estimate heat = credibleHeatW(figures);
    Estimate power = figures.get(DutyFigure.POWER);
    if (heat == null || heat.value() <= 0) {
      return Optional.empty();
    }
    return power == null
        ? Optional.of(
            new Estimate(
                heat.value() * FROM_AIR.value(),
                Math.hypot(heat.standard() * FROM_AIR.value(), heat.value() * FROM_AIR.standard())))
        : Optional.of(
            new Estimate(
                heat.value() - POWER_TO_WATER * power.value(),
                Math.hypot(heat.standard(), power.standard())));
  }

  /** The channel that speaks for the entering air. */
  private Channel airChannel() {
    return timeline.has(Channel.AIR_IN) ? Channel.AIR_IN : Channel.AIR_AMBIENT;
  }

  private void putTemperature(
      DutyFigure figure,
      OptionalDouble valueK,
      Channel channel,
      Map<DutyFigure, Estimate> figures) {
    valueK.ifPresent(
        value -> figures.put(figure, new Estimate(value, temperatureUncertaintyK(channel, value))));
  }

  private static void put(
      DutyFigure figure, OptionalDouble value, double standard, Map<DutyFigure, Estimate> figures) {
    value.ifPresent(known -> figures.put(figure, new Estimate(known, standard)));
  }

  private double saturationUncertaintyK(Channel pressure, SteadySpan span) {
    double gaugePa = timeline.meanBetween(pressure, span.startMs(), span.endMs()).orElse(0);
    double relative =
        uncertainty(pressure, gaugePa)
            / Math.max(STANDARD_ATMOSPHERE_PA, gaugePa + STANDARD_ATMOSPHERE_PA);
    return Math.hypot(relative / SATURATION_SLOPE_PER_K, SATURATION_MODEL_K);
  }

  private double pipeUncertaintyK(Channel channel, SteadySpan span) {
    return temperatureUncertaintyK(
        channel, timeline.meanBetween(channel, span.startMs(), span.endMs()).orElse(LOAD_AIR_K));
  }

  private double uncertainty(Channel channel, double value) {
    return ProbeUncertainty.of(rig, channel).at(value);
  }

  private double temperatureUncertaintyK(Channel channel, double valueK) {
    return ProbeUncertainty.of(rig, channel).atTemperatureK(valueK);
  }
}
