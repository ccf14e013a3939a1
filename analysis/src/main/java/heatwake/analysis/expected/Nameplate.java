package heatwake.analysis.expected;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.expected.RatedQuantity.Slope;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Heat and power that the nameplate's rating points promise at other conditions, by {@link
 * RatedQuantity}.
 *
 * <p>The usual slopes (common practice, spreads ours): heat follows the density of the suction gas,
 * which changes by some 3 % per kelvin of evaporating temperature; the coil's own approach takes a
 * part of it, so 2.7 % per kelvin of wet bulb. It falls by 0.6 % per kelvin of warmer water. Power
 * hardly follows the air (0.4 %) and climbs by 1.6 % per kelvin of warmer water.
 */
public final class Nameplate {
  private static final Slope HEAT_BY_AIR = new Slope(0.027, 0.006);
  private static final Slope HEAT_BY_WATER = new Slope(-0.006, 0.003);
  private static final Slope POWER_BY_AIR = new Slope(0.004, 0.005);
  private static final Slope POWER_BY_WATER = new Slope(0.016, 0.005);

  private final RatedQuantity heat;
  private final Optional<RatedQuantity> power;

  private Nameplate(RatedQuantity heat, Optional<RatedQuantity> power) {
    this.heat = heat;
    this.power = power;
  }

  /** The nameplate of a rig, if it states a rating point. */
  public static Optional<Nameplate> of(Rig rig) {
    List<Rating> ratings = rig.heater().ratings();
    if (ratings.isEmpty()) {
      return Optional.empty();
    }
    AbsolutePressure air = Atmosphere.standard(rig.site().altitudeM());
    List<Point> heats = new ArrayList<>();
    List<Point> powers = new ArrayList<>();
    for (Rating rating : ratings) {
      double humidity = rating.humidity().orElse(Conditions.ratedHumidity(rig));
      double wetBulbK =
          Conditions.wetBulb(Estimate.exact(rating.airK()), Estimate.exact(humidity), air).value();
      heats.add(new Point(wetBulbK, rating.waterK(), rating.heatW()));
      rating.powerW().ifPresent(powerW -> powers.add(new Point(wetBulbK, rating.waterK(), powerW)));
    }
    return Optional.of(
        new Nameplate(
            through(heats, HEAT_BY_AIR, HEAT_BY_WATER),
            powers.isEmpty()
                ? Optional.empty()
                : Optional.of(through(powers, POWER_BY_AIR, POWER_BY_WATER))));
  }

  /** Heat to expect. */
  public Estimate heatW(Conditions conditions) {
    return heat.at(conditions.wetBulbK(), conditions.waterK());
  }

  /** Power to expect, if the nameplate states any. */
  public Optional<Estimate> powerW(Conditions conditions) {
    return power.map(one -> one.at(conditions.wetBulbK(), conditions.waterK()));
  }

  /** What would make the expected figures possible or better, one sentence each. */
  public static List<String> missing(Timeline timeline, Rig rig) {
    if (rig.heater().ratings().isEmpty()) {
      return List.of("expected heat: no [[heater.rating]] in the rig");
    }
    if (!timeline.has(EnteringAir.channel(timeline))) {
      return List.of("expected heat: the air is not measured; clip air-in or air-ambient");
    }
    if (!timeline.has(Channel.HUMIDITY_IN)) {
      return List.of(
          String.format(
              Locale.ROOT,
              "expected heat: humidity-in is not measured, %.0f ± %.0f %% is assumed, less in air"
                  + " above 27 °C; clip it for a closer figure",
              Conditions.ratedHumidity(rig) * 100,
              Estimate.COVERAGE_FACTOR * Conditions.ASSUMED_HUMIDITY_SPREAD * 100));
    }
    return List.of();
  }

  /** One rated value and its conditions. */
  private record Point(double wetBulbK, double waterK, double value) {}

  private static RatedQuantity through(List<Point> points, Slope byAir, Slope byWater) {
    RatedQuantity quantity =
        new RatedQuantity(
            points.stream().mapToDouble(Point::value).average().orElseThrow(),
            points.stream().mapToDouble(Point::wetBulbK).average().orElseThrow(),
            points.stream().mapToDouble(Point::waterK).average().orElseThrow(),
            byAir,
            byWater);
    points.forEach(point -> quantity.add(point.wetBulbK(), point.waterK(), point.value()));
    return quantity;
  }
}
