package heatwake.analysis.pool;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The most heat that air, wind and sky can take from an open pool: a claim beyond it is no loss of
 * the pool. Where the weather is measured, it is the loss of a much used surface under a clear sky
 * in that weather. Else the air is taken as dry and the wind as strong over the whole run, the
 * surface as that of a pool in use: about 1500 W/m2 at 28 Cel in air of 15 Cel.
 *
 * @param totalW for the whole surface
 * @param areaM2 the surface it holds for
 */
public record MostLoss(Estimate totalW, double areaM2) {
  /**
   * The equation of the ASHRAE Handbook holds for a pool in use, factor 1; its table of activity
   * factors ends at 1.5 for wave pools and slides (from memory).
   */
  private static final double MOST_ACTIVITY = 1.5;

  private static final double IN_USE = 1;

  /** Mean humidity of very dry outdoor air; ours. */
  private static final Estimate DRY = Estimate.exact(0.2);

  /** Mean wind at the water over hours, twice as much at a mast: a strong wind; ours. */
  private static final Estimate STRONG_WIND_M_PER_S = Estimate.exact(3);

  /** Mean depth that few pools stay under, where no surface is stated; common practice. */
  private static final double LEAST_DEPTH_M = 1;

  /** The limit for a run; empty without an air temperature or a size of the pool. */
  public static Optional<MostLoss> of(Timeline timeline, Rig rig, Estimate poolK) {
    OptionalDouble area = areaM2(rig);
    if (area.isEmpty() || !WeatherLoss.covers(poolK)) {
      return Optional.empty();
    }
    Optional<Weather> measured = WeatherLoss.weather(timeline, rig);
    return measured
        .map(weather -> of(area.getAsDouble(), poolK, weather, MOST_ACTIVITY))
        .or(
            () ->
                airK(timeline)
                    .map(
                        air ->
                            new Weather(air, DRY, STRONG_WIND_M_PER_S, WeatherLoss.pressure(rig)))
                    .map(weather -> of(area.getAsDouble(), poolK, weather, IN_USE)));
  }

  private static MostLoss of(double areaM2, Estimate poolK, Weather weather, double activity) {
    return new MostLoss(
        SurfaceLoss.underClearSky(areaM2, poolK, weather, activity).totalW(), areaM2);
  }

  private static OptionalDouble areaM2(Rig rig) {
    OptionalDouble volume = rig.pool().volumeM3();
    return rig.pool().surfaceM2().isPresent() || volume.isEmpty()
        ? rig.pool().surfaceM2()
        : OptionalDouble.of(volume.getAsDouble() / LEAST_DEPTH_M);
  }

  private static Optional<Estimate> airK(Timeline timeline) {
    Channel channel = timeline.preferred(Channel.AIR_AMBIENT, Channel.AIR_IN);
    double mean = MovingMean.once(timeline.of(channel), 0, timeline.size());
    return Double.isNaN(mean) ? Optional.empty() : Optional.of(Estimate.exact(mean));
  }
}
