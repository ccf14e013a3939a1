package heatwake.analysis.duty;

/** What is known of a heater while it runs steadily. SI; a share is 1 for 100 %. */
public enum DutyFigure {
  /** Heat given to the water, W. */
  HEAT,
  /** Heat the nameplate promises at these conditions, W. */
  EXPECTED_HEAT,
  /** Electric power of the heater, without another load on its meter ({@link MeterLoad}), W. */
  POWER,
  /** Zeroed temperature rise of the water through the heater, K. */
  RISE,
  /** Water through the heater, m3/s. */
  FLOW,
  /** Entering water, K. */
  WATER_IN,
  /** Entering air, K. */
  AIR,
  /** Relative humidity of the entering air, 0 to 1. */
  HUMIDITY,
  /** Heat over expected heat. */
  HEAT_RATIO,
  /** Power over expected power. */
  POWER_RATIO,
  /**
   * Power over expected power, less what the head on the condenser can explain: some 3 % a kelvin
   * of condensing temperature above the least that any heater needs.
   */
  UNEXPLAINED_POWER_RATIO,
  /** Coefficient of performance over the expected one. */
  COP_RATIO,
  /**
   * Heat over the greatest rated heat: how hard the exchangers work. From the measured heat, else
   * the expected heat, else from the air temperature alone.
   */
  LOAD,
  /** Condensing temperature, K. */
  CONDENSING,
  /** Evaporating temperature, K. */
  EVAPORATING,
  /** Mean of condensing (a blend's lies below its dew point) minus leaving water, K. */
  CONDENSER_APPROACH,
  /** Entering air minus mean of evaporating (a blend's lies below its dew point), K. */
  EVAPORATOR_APPROACH,
  /** The evaporator's approach brought to the rated heat and standard air, K. */
  STANDARD_APPROACH,
  /** Suction superheat, K. */
  SUPERHEAT,
  /** Suction line at the compressor minus entering air, K. */
  SUCTION_EXCESS,
  /** Liquid subcooling, K. */
  SUBCOOLING,
  /** Subcooling over bubble point minus entering water: what the liquid is cooled of all it can. */
  SUBCOOLING_SHARE,
  /** Discharge line minus condensing temperature, K. */
  DISCHARGE_SUPERHEAT,
  /** Entering minus leaving air, K. */
  AIR_DROP,
  /**
   * Dry air through the coil for each watt of the greatest rated heat, kg/s/W; without {@link
   * #HUMIDITY} the most that it can be, and only where that is little.
   */
  AIR_FLOW,
  /** Saturation temperature of the standing pressure above the warmer of air and water, K. */
  STANDING_EXCESS
}
