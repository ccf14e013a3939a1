package heatwake.analysis.site;

import java.util.OptionalDouble;

/**
 * One rating point of the nameplate.
 *
 * @param airK dry-bulb temperature of the entering air
 * @param humidity relative humidity of the entering air, 0 to 1, if stated
 * @param waterK temperature of the entering water
 * @param heatW heat given to the water
 * @param powerW electric power taken, if stated
 */
public record Rating(
    double airK, OptionalDouble humidity, double waterK, double heatW, OptionalDouble powerW) {}
