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

  /** Above a fan the threshold is looked for up to this share of the running level (ours). */
  private static final double FAN_HIGH = 0.5;

  /**
   * @param all how often the draw stood at which level
   * @param heldInstants a level held for fewer instants is an inrush
   * @param plate greatest draw by the nameplate, if stated
   * @param least a top below this is no compressor where there is no nameplate
   * @param effect what a compressor does elsewhere: where that goes with the draw a lower top is
   *     one too
   */
  static DrawLevels of(
      LevelHistogram all,
      int heldInstants,
      OptionalDouble plate,
      double least,
      CompressorEffect effect) {
    double top = all.highestHeld(heldInstants);
    double running = all.medianFrom(RUNNING_SHARE * top);
    boolean byPlate = plate.isPresent() && top < PLATE_WRONG * plate.getAsDouble();
    boolean isSmall = running < (byPlate ? PLATE_HIGH * plate.getAsDouble() : least);
    if (isSmall && effect.goesWithTheDraw()) {
      return ofItself(all, running);
    }
    if (byPlate) {
      double full = plate.getAsDouble();
      return new DrawLevels(
          Math.max(running, 0.5 * full), all.valley(PLATE_LOW * full, PLATE_HIGH * full));
    }
    return isSmall ? new DrawLevels(running, least) : ofItself(all, running);
  }

  private static DrawLevels ofItself(LevelHistogram all, double running) {
    return new DrawLevels(running, all.valley(RUN_LOW * running, RUN_HIGH * running));
  }

  /**
   * These levels, or higher ones where a compressor's effect belies what lies just above the
   * threshold: no lift, no rise.
   *
   * @param beyondFan what no fan draws; infinite where it is not known
   */
  DrawLevels checked(
      double[] draw, CompressorEffect effect, OptionalDouble plate, double beyondFan) {
    double reference = Math.max(compressor, plate.orElse(0));
    double lowest = Math.min(PLATE_HIGH * reference, 0.9 * compressor);
    if (effect.isAbsent() && plate.isPresent()) {
      return new DrawLevels(
          compressor, Math.max(threshold, Math.min(PLATE_HIGH * plate.getAsDouble(), beyondFan)));
    }
    double belied = effect.medianWhere(draw, threshold, lowest);
    if (!(belied < CompressorEffect.NONE)) {
      return this;
    }
    return new DrawLevels(
        compressor, LevelHistogram.of(draw).valley(Math.sqrt(threshold * lowest), lowest));
  }

  /** These levels with the threshold above a fan, or another load, that draws more than it. */
  DrawLevels above(double fan, LevelHistogram all) {
    double lowest = LeadingFan.ABOVE * fan;
    return new DrawLevels(compressor, all.valley(lowest, Math.max(lowest, FAN_HIGH * compressor)));
  }
}
