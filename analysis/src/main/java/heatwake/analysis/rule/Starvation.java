package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.uncertainty.Doubt;

/**
 * Whether superheat or subcooling show a coil short of refrigerant. Its approaches then say nothing
 * of air or water.
 */
public final class Starvation {
  /** Superheat above this is more than a valve in control leaves, K; common practice. */
  static final double HIGH_SUPERHEAT_K = 12;

  /** Less is a valve's in control: they are set to 4 to 8 K, and err by some; common practice. */
  private static final double HELD_SUPERHEAT_K = 9;

  /** Subcooling below this: vapour in the liquid line, K; common practice. */
  private static final double LOW_SUBCOOLING_K = 1.5;

  /**
   * With little subcooling, a coil is starved if it evaporates this low (standard air), K; ours.
   */
  private static final double LOW_EVAPORATING_K = 13;

  /** Condensing this far above the leaving water is not low, K; see condenser-approach. */
  private static final double HIGH_CONDENSING_K = 11;

  private Starvation() {}

  /**
   * Whether either shows; little subcooling only where neither want of air nor liquid that stands
   * in the coil explains it.
   */
  public static boolean shows(Duty duty) {
    boolean isSuperheated =
        duty.of(DutyFigure.SUPERHEAT)
            .filter(superheat -> superheat.value() > HIGH_SUPERHEAT_K)
            .isPresent();
    return (isSuperheated && !HotSuction.shows(duty))
        || (hasVapourInLiquid(duty)
            && !LittleAir.isLikely(duty)
            && !Flooding.shows(duty)
            && !mayBeForWantOfAir(duty)
            && duty.of(DutyFigure.STANDARD_APPROACH)
                .filter(approach -> approach.value() > LOW_EVAPORATING_K)
                .isPresent());
  }

  /**
   * Whether the coil may lie so low for want of air, whatever the liquid line shows. A valve that
   * holds its superheat has the refrigerant that the coil can evaporate: less of it would be all
   * vapour before the coil's end. So it is the air that is short, unless that is known.
   */
  public static boolean mayBeForWantOfAir(Duty duty) {
    return duty.of(DutyFigure.SUPERHEAT)
            .filter(superheat -> superheat.value() < HELD_SUPERHEAT_K)
            .isPresent()
        && duty.of(DutyFigure.STANDARD_APPROACH)
            .filter(approach -> approach.value() > Symptom.EVAPORATING.normalTo())
            .isPresent()
        && !LittleAir.isRuledOut(duty);
  }

  /**
   * Whether the condenser holds more pressure than a coil short of refrigerant leaves it: that
   * passes less heat, and the condenser's approach goes with the heat.
   */
  public static boolean isContradictedByCondenser(Duty duty) {
    return duty.of(DutyFigure.CONDENSER_APPROACH)
        .filter(approach -> approach.value() > HIGH_CONDENSING_K)
        .isPresent();
  }

  /** Whether superheat is beyond doubt more than a valve in control leaves, at whatever speed. */
  public static boolean isCertain(Duty duty) {
    return !HotSuction.shows(duty)
        && duty.of(DutyFigure.SUPERHEAT)
            .filter(superheat -> Doubt.above(superheat, HIGH_SUPERHEAT_K))
            .isPresent();
  }

  /** Whether subcooling shows vapour in the liquid line. */
  static boolean hasVapourInLiquid(Duty duty) {
    return duty.of(DutyFigure.SUBCOOLING)
        .filter(subcooling -> subcooling.value() + subcooling.standard() < LOW_SUBCOOLING_K)
        .isPresent();
  }
}
