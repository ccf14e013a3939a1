package heatwake.analysis.duty;

import heatwake.analysis.expected.Conditions;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.site.Rating;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.Optional;

/** What the air coil does over a steady span, from the figures of heat, air and circuit. */
final class CoilDuty {
  /**
   * Humidity where it is not measured, lower in hot air (see {@link Conditions}); its standard
   * uncertainty spans dry and foggy weather.
   */
  private static final double UNKNOWN_HUMIDITY = 0.65;

  private static final double UNKNOWN_HUMIDITY_SPREAD = 0.15;

  /** Part of the electric power that ends up in the water; the rest warms the air; ours. */
  private static final double POWER_TO_WATER = 0.95;

  /** Part of the heat that comes from the air where power is not known; COP 5 +- 1. */
  private static final Estimate FROM_AIR = new Estimate(0.8, 0.04);

  private static final double W_PER_KW = 1000;

  private final Optional<Rating> fullLoad;
  private final AbsolutePressure atmosphere;

  /**
   * @param fullLoad the nameplate's greatest heat, if it states any
   * @param atmosphere of the site
   */
  CoilDuty(Optional<Rating> fullLoad, AbsolutePressure atmosphere) {
    this.fullLoad = fullLoad;
    this.atmosphere = atmosphere;
  }

  /** Adds the figures of the coil that follow from those given. */
  void read(Map<DutyFigure, Estimate> figures) {
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
                  humidity(figures, air.value()),
                  new Estimate(air.value() - approach.value(), approach.standard()),
                  share,
                  atmosphere)
              .standardApproachK());
    }
    Estimate drop = figures.get(DutyFigure.AIR_DROP);
    if (fromAir.isPresent() && drop != null && fullLoad.isPresent()) {
      airFlow(fromAir.get(), air.value(), drop, figures.get(DutyFigure.HUMIDITY))
          .ifPresent(flow -> figures.put(DutyFigure.AIR_FLOW, flow));
    }
  }

  /**
   * Dry air for each watt of rated heat. Where the humidity is not known, the most that it can be:
   * that of air which gives up no water for the same heat. Of that nothing but little is news.
   */
  private Optional<Estimate> airFlow(
      Estimate fromAirW, double airK, Estimate dropK, Estimate humidity) {
    double ratedW = fullLoad.orElseThrow().heatW();
    if (humidity != null) {
      return CoilAir.kgPerS(fromAirW, airK, dropK, humidity, atmosphere)
          .map(flow -> flow.times(1 / ratedW));
    }
    return CoilAir.kgPerS(fromAirW, airK, dropK, Estimate.exact(0), atmosphere)
        .map(flow -> flow.times(1 / ratedW))
        .filter(most -> most.value() * W_PER_KW < Symptom.AIR_FLOW.normalFrom());
  }

  private static Estimate humidity(Map<DutyFigure, Estimate> figures, double airK) {
    return figures.getOrDefault(
        DutyFigure.HUMIDITY,
        new Estimate(UNKNOWN_HUMIDITY * Conditions.drierInHotAir(airK), UNKNOWN_HUMIDITY_SPREAD));
  }

  private static double ratedPowerW(Rating rating) {
    return rating.powerW().orElse((1 - FROM_AIR.value()) * rating.heatW() / POWER_TO_WATER);
  }

  private static Optional<Estimate> fromAirW(Map<DutyFigure, Estimate> figures) {
    Estimate power = figures.get(DutyFigure.POWER);
    return CredibleHeat.of(figures)
        .filter(heat -> heat.value() > 0)
        .map(
            heat ->
                power == null
                    ? new Estimate(
                        heat.value() * FROM_AIR.value(),
                        Math.hypot(
                            heat.standard() * FROM_AIR.value(), heat.value() * FROM_AIR.standard()))
                    : new Estimate(
                        heat.value() - POWER_TO_WATER * power.value(),
                        Math.hypot(heat.standard(), power.standard())));
  }
}
