package heatwake.analysis.rule;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Locale;

/**
 * Whether the air's own cooling shows too little of it. It tells a coil that evaporates low for
 * want of air from one that does for want of refrigerant.
 */
public final class LittleAir {
  /**
   * Air below this for each watt of rated heat is little, kg/s/W; common practice: 0.07 to 0.11.
   */
  public static final double LIMIT = 0.055e-3;

  /** Standard uncertainties for what another, independent figure bears out. */
  private static final double BORNE_OUT_FACTOR = 2;

  private LittleAir() {}

  /** Beyond the doubt that is left once the approach bears it out. */
  public static boolean shows(Duty duty) {
    return isBelow(duty, BORNE_OUT_FACTOR);
  }

  /** Beyond doubt by itself. */
  public static boolean isCertain(Duty duty) {
    return isBelow(duty, Doubt.FACTOR);
  }

  /** Likely enough not to take the coil for one short of refrigerant. */
  public static boolean isLikely(Duty duty) {
    return isBelow(duty, 1);
  }

  /**
   * Whether there is enough of it. Without its humidity the air's own cooling tells only the most
   * that there may be, since water that it gives up takes part of the cooling.
   */
  public static boolean isRuledOut(Duty duty) {
    return duty.has(DutyFigure.AIR_FLOW, DutyFigure.HUMIDITY) && !isLikely(duty);
  }

  /** How much air it is: {@code 0.038 kg/s of air for each kW of rated heat, ...}. */
  public static String words(Estimate flow) {
    return String.format(
        Locale.ROOT,
        "%.3f kg/s of air for each kW of rated heat, where 0.07 to 0.11 is usual",
        flow.value() * 1000);
  }

  private static boolean isBelow(Duty duty, double standards) {
    return duty.of(DutyFigure.AIR_FLOW)
        .filter(flow -> flow.value() + standards * flow.standard() < LIMIT)
        .isPresent();
  }
}
