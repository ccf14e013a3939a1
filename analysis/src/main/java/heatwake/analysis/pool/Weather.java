package heatwake.analysis.pool;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.uncertainty.Estimate;

/**
 * The air over a pool, as its mean over a while.
 *
 * @param airK temperature
 * @param relativeHumidity 0 to 1
 * @param windMPerS wind at the water surface; a mast's wind is higher
 * @param pressure air pressure
 */
public record Weather(
    Estimate airK, Estimate relativeHumidity, Estimate windMPerS, AbsolutePressure pressure) {}
