package heatwake.analysis.duty;

import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rating;
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

/** Reads the duty of a heater off its steady spans and the readings beneath them. */
public final class DutyReading {
  private static final double ICE_POINT_K = 273.15;
  private static final double STANDARD_ATMOSPHERE_PA = 101_325;

  /**
   * Relative change of saturation pressure per kelvin, the least of the refrigerants met here up to
   * a condensing temperature of 60 Cel (R-410A, Clausius-Clapeyron: L/(R T2)); it turns the
   * uncertainty of a pressure into one of a saturation temperature without flattering it.
   */
  private static final double SATURATION_SLOPE_PER_K = 0.021;

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

  private final Rig rig;
  private final Timeline timeline;

  private DutyReading(Rig rig, Timeline timeline) {
    this.rig = rig;
    this.timeline = timeline;
  }

  /** One duty for each steady span, in order. */
  public static List<Duty> of(Rig rig, Timeline timeline, List<SteadySpan> spans) {
    DutyReading reading = new DutyReading(rig, timeline);
    List<Duty> found = new ArrayList<>(spans.size());
    for (SteadySpan span : spans) {
      found.add(reading.duty(span));
    }
    return List.copyOf(found);
  }

  private Duty duty(SteadySpan span) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    span.heatW().ifPresent(heat -> figures.put(DutyFigure.HEAT, heat));
    span.expectedHeatW().ifPresent(heat -> figures.put(DutyFigure.EXPECTED_HEAT, heat));
    span.powerW().ifPresent(power -> figures.put(DutyFigure.POWER, power));
    span.riseK().ifPresent(rise -> figures.put(DutyFigure.RISE, rise));
    span.flowM3PerS().ifPresent(flow -> figures.put(DutyFigure.FLOW, flow));
    span.ratio().ifPresent(ratio -> figures.put(DutyFigure.HEAT_RATIO, ratio));
    putRatiosOfPower(span, figures);
    putConditions(span, figures);
    putRefrigerant(span, figures);
    load(figures).ifPresent(load -> figures.put(DutyFigure.LOAD, load));
    return new Duty(span.startMs(), span.endMs(), figures);
  }

  private static void putRatiosOfPower(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.powerW().isPresent() && span.expectedPowerW().isPresent()) {
      figures.put(
          DutyFigure.POWER_RATIO, span.powerW().get().dividedBy(span.expectedPowerW().get()));
    }
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
        span.condenserApproachK(),
        Math.hypot(condensingU, pipeUncertaintyK(Channel.WATER_OUT, span)),
        figures);
    put(
        DutyFigure.EVAPORATOR_APPROACH,
        span.evaporatorApproachK(),
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

  private Optional<Estimate> load(Map<DutyFigure, Estimate> figures) {
    OptionalDouble ratedW = rig.heater().ratings().stream().mapToDouble(Rating::heatW).max();
    Estimate heat = figures.getOrDefault(DutyFigure.HEAT, figures.get(DutyFigure.EXPECTED_HEAT));
    if (ratedW.isPresent() && heat != null) {
      return Optional.of(heat.times(1 / ratedW.getAsDouble()));
    }
    return Optional.ofNullable(figures.get(DutyFigure.AIR))
        .map(air -> 1 + LOAD_PER_K * (air.value() - LOAD_AIR_K))
        .map(load -> Estimate.exact(Math.max(LEAST_LOAD, Math.min(GREATEST_LOAD, load))));
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
