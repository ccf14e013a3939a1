package heatwake.analysis.site;

/**
 * Where the heater stands.
 *
 * @param name what the person calls it; never empty
 * @param altitudeM height above sea level, for the absolute pressure
 */
public record Site(String name, double altitudeM) {}
