package heatwake.analysis.air;

/** The air in which the coil of a heater gathers ice, K. */
public final class IcingAir {
  private static final double FREEZING_K = 273.15;

  /** In air colder than this (7 Cel) frost is met on sound coils; common practice. */
  public static final double FROST_BELOW_K = FREEZING_K + 7;

  /** In air warmer than this (12 Cel) a sound coil does not ice; common practice. */
  public static final double NO_SOUND_COIL_ABOVE_K = FREEZING_K + 12;

  /**
   * In air warmer than this (15 Cel) there is no ice to melt on any coil; ours: what common
   * practice has of sound coils, with a margin for a dirty one and for where the probe hangs.
   */
  public static final double NO_COIL_ABOVE_K = FREEZING_K + 15;

  private IcingAir() {}
}
