package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.rule.Wording;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Pressures around one compressor start, gauge Pa; and whether the water was warmed in spite of
 * them.
 *
 * @param cycle that it begins
 * @param untilMs end of its running
 * @param beforePa high side before the start
 * @param afterPa high side once it has settled
 * @param suctionPa low side then
 * @param powerW what is drawn then
 * @param waterLiftPa what warm water alone makes of the high side; see {@link WaterLift}
 * @param waterWarmed whether the water takes up heat
 * @param waterSeen whether that is known
 * @param littleHeat whether it takes up beyond doubt less than a quarter of the expected heat
 */
public record StartPressures(
    Cycle cycle,
    long untilMs,
    double beforePa,
    double afterPa,
    OptionalDouble suctionPa,
    OptionalDouble powerW,
    OptionalDouble waterLiftPa,
    boolean waterWarmed,
    boolean waterSeen,
    boolean littleHeat) {
  /**
   * A sound compressor raises the high side by more than this share (absolute); common practice.
   */
  public static final double LEAST_RISE = 0.10;

  /**
   * One that gives a quarter of its heat may raise it by so much: its valves leak, or it runs
   * backwards, but it does compress a little; ours.
   */
  static final double LEAST_RISE_FOR_HEAT = 0.25;

  /** A sound compressor holds at least this spread between the sides, of the low side; ours. */
  private static final double LEAST_SPREAD = 0.25;

  /** Less power than this may be a fan, not a compressor; ours. */
  static final double COMPRESSOR_W = 300;

  /** A fan parts the sides by no more than this share; ours, see {@link #isFans}. */
  private static final double LEAST_PART = 0.05;

  boolean failed() {
    if (waterWarmed || isFans()) {
      return false;
    }
    double rise = share(afterPa, beforePa);
    if (rise >= LEAST_RISE) {
      return isWatersOwn() || (littleHeat && rise < LEAST_RISE_FOR_HEAT && isUnspread());
    }
    if (suctionPa.isEmpty()) {
      // In hot air over cold water even a sound heater starts from a high standing pressure;
      // only the water can then tell.
      return waterSeen;
    }
    return isUnspread() || isWatersOwn();
  }

  /**
   * Whether the draw is small, and the sides, which level out at rest, lie together as before: a
   * compressor that turns parts them a little, however small or worn it is.
   */
  private boolean isFans() {
    boolean parted = suctionPa.isPresent() && share(afterPa, suctionPa.getAsDouble()) > LEAST_PART;
    return powerW.isPresent() && powerW.getAsDouble() < COMPRESSOR_W && !parted;
  }

  /**
   * What shows, beside its high side, that the compressor compresses, in words: that the sides have
   * parted, or where that is not known, that the water takes up heat. Empty if nothing does.
   */
  public Optional<String> otherProof() {
    if (suctionPa.isPresent()) {
      return isUnspread()
          ? Optional.empty()
          : Optional.of("the low side stands at " + Wording.megapascals(suctionPa.getAsDouble()));
    }
    return waterWarmed ? Optional.of("the water takes up heat") : Optional.empty();
  }

  /** Whether the two sides are known, and lie together as no sound compressor leaves them. */
  public boolean isUnspread() {
    return suctionPa.isPresent() && share(afterPa, suctionPa.getAsDouble()) < LEAST_SPREAD;
  }

  /** Whether the high side stands no higher than water warmer than the coil puts it. */
  boolean isWatersOwn() {
    return waterLiftPa.isPresent() && share(afterPa, waterLiftPa.getAsDouble()) < LEAST_RISE;
  }

  private static double share(double gaugePa, double belowPa) {
    return (gaugePa - belowPa) / (belowPa + AbsolutePressure.STANDARD_ATMOSPHERE.pa());
  }
}
