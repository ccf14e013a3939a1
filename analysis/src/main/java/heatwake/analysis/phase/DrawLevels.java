package heatwake.analysis.phase;

import java.util.OptionalDouble;

/**
 * The level of a running compressor in the heater's draw, and the threshold under it: laid into the
 * emptiest stretch of levels where it can be, from the nameplate or from the run itself.
 *
 * @param compressor usual draw with the compressor on, or what the nameplate lets expect
 * @param threshold draw from which the compressor is on
 */
record DrawLevels(double compressor, double threshold) {
  /**
   * Fan and control take less, a compressor at its slowest more than this share of the plate
   * (ours).
   */
  private static final double PLATE_LOW = 0.07;

  private static final double PLATE_HIGH = 0.3;

  /** A draw so far above the plate says that the plate is wrong (ours). */
  private static final double PLATE_WRONG = 3;

  /** Without a plate: shares of the running level (ours; inverters go down to 0.2). */
  private static final double RUN_LOW = 0.05;

  private static final double RUN_HIGH = 0.5;

  /** The running level is the middle of all draw above this share of the top (ours). */
  private static final double RUNNING_SHARE = 0.3;

  /**
   * @param all how often the draw stood at which level
   * @param heldInstants a level held for fewer instants is an inrush
   * @param plate greatest draw by the nameplate, if stated
   * @param least a top below this is no compressor where there is no nameplate
   */
  static DrawLevels of(LevelHistogram all, int heldInstants, OptionalDouble plate, double least) {
    double top = all.highestHeld(heldInstants);
    double running = all.medianFrom(RUNNING_SHARE * top);
    if (plate.isPresent() && top < PLATE_WRONG * plate.getAsDouble()) {
      double full = plate.getAsDouble();
      return new DrawLevels(
          Math.max(running, 0.5 * full), all.valley(PLATE_LOW * full, PLATE_HIGH * full));
    }
    return running < least
        ? new DrawLevels(running, least)
        : new DrawLevels(running, all.valley(RUN_LOW * running, RUN_HIGH * running));
  }

  /** Above everything that a fan may draw by the plate. */
  static DrawLevels aboveAnyFan(double plate) {
    return new DrawLevels(0.5 * plate, PLATE_HIGH * plate);
  }
}
