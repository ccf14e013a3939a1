package heatwake.analysis.expected;

import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * The most heat that a heater of a nameplate can give: what the plate promises at the conditions,
 * or, where nobody measures the air, what it would promise in the best air there is.
 */
public final class MostHeat {
  /** Wet bulbs above this are hardly met where pools are heated, K; common practice. */
  private static final double GREATEST_WET_BULB_K = 273.15 + 28;

  private MostHeat() {}

  /** Over instants of a run; empty without a nameplate or without the entering water. */
  public static Optional<Estimate> of(Timeline timeline, Rig rig, int from, int to) {
    return Nameplate.of(rig)
        .flatMap(
            plate ->
                Conditions.of(timeline, rig, from, to)
                    .or(
                        () ->
                            Conditions.waterK(timeline, rig, from, to).map(MostHeat::inTheBestAir))
                    .map(plate::heatW));
  }

  /** In the best air, with this water. */
  public static Optional<Estimate> inTheBestAir(Rig rig, Estimate waterK) {
    return Nameplate.of(rig).map(plate -> plate.heatW(inTheBestAir(waterK)));
  }

  private static Conditions inTheBestAir(Estimate waterK) {
    return new Conditions(Estimate.exact(GREATEST_WET_BULB_K), waterK);
  }
}
