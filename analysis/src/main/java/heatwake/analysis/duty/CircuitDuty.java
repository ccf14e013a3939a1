package heatwake.analysis.duty;

import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the refrigerant circuit does over a steady span. */
final class CircuitDuty {
  /** Standard uncertainty of a saturation temperature from the property equations, K; ours. */
  private static final double SATURATION_MODEL_K = 0.1;

  private final SpanReadings readings;
  private final Optional<Glide> glide;

  /**
   * @param glide that of the refrigerant, where the rig names it
   */
  CircuitDuty(SpanReadings readings, Optional<Glide> glide) {
    this.readings = readings;
    this.glide = glide;
  }

  /** Adds the figures of the circuit that are known. */
  void read(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    double condensingU = saturationStandardK(Channel.PRESSURE_DISCHARGE, span);
    double evaporatingU = saturationStandardK(Channel.PRESSURE_SUCTION, span);
    put(DutyFigure.CONDENSING, span.condensingK(), condensingU, figures);
    put(DutyFigure.EVAPORATING, span.evaporatingK(), evaporatingU, figures);
    put(
        DutyFigure.CONDENSER_APPROACH,
        lessGlide(span.condenserApproachK(), span.condensingK()),
        Math.hypot(condensingU, readings.temperatureStandardK(Channel.WATER_OUT, span)),
        figures);
    put(
        DutyFigure.EVAPORATOR_APPROACH,
        plusGlide(span.evaporatorApproachK(), span.evaporatingK()),
        Math.hypot(
            evaporatingU,
            readings.enteringAir(span).map(air -> air.temperatureK().standard()).orElse(0.0)),
        figures);
    put(
        DutyFigure.SUPERHEAT,
        span.superheatK(),
        Math.hypot(evaporatingU, readings.temperatureStandardK(Channel.TEMP_SUCTION, span)),
        figures);
    put(
        DutyFigure.SUBCOOLING,
        span.subcoolingK(),
        Math.hypot(condensingU, readings.temperatureStandardK(Channel.TEMP_LIQUID, span)),
        figures);
    putSubcoolingShare(span, condensingU, figures);
    OptionalDouble discharge = readings.mean(Channel.TEMP_DISCHARGE, span);
    if (discharge.isPresent() && span.condensingK().isPresent()) {
      figures.put(
          DutyFigure.DISCHARGE_SUPERHEAT,
          new Estimate(
              discharge.getAsDouble() - span.condensingK().getAsDouble(),
              Math.hypot(
                  condensingU, readings.temperatureStandardK(Channel.TEMP_DISCHARGE, span))));
    }
  }

  private void putSubcoolingShare(
      SteadySpan span, double condensingU, Map<DutyFigure, Estimate> figures) {
    OptionalDouble liquid = readings.mean(Channel.TEMP_LIQUID, span);
    if (liquid.isPresent() && span.subcoolingK().isPresent() && span.waterInK().isPresent()) {
      double waterInK = span.waterInK().getAsDouble();
      LiquidEnd.share(
              new Estimate(liquid.getAsDouble() + span.subcoolingK().getAsDouble(), condensingU),
              new Estimate(
                  liquid.getAsDouble(), readings.temperatureStandardK(Channel.TEMP_LIQUID, span)),
              new Estimate(waterInK, readings.temperatureStandardK(Channel.WATER_IN, waterInK)))
          .ifPresent(share -> figures.put(DutyFigure.SUBCOOLING_SHARE, share));
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

  private static void put(
      DutyFigure figure, OptionalDouble value, double standard, Map<DutyFigure, Estimate> figures) {
    value.ifPresent(known -> figures.put(figure, new Estimate(known, standard)));
  }

  private double saturationStandardK(Channel pressure, SteadySpan span) {
    double gaugePa = readings.mean(pressure, span).orElse(0);
    double standardPa = readings.standard(pressure, gaugePa);
    return Math.hypot(SaturationSlope.temperatureK(standardPa, gaugePa), SATURATION_MODEL_K);
  }
}
