package heatwake.dashboard.chart;

/**
 * A mark on the time axis.
 *
 * @param ms where it stands, UTC milliseconds
 * @param label what is written there
 * @param newDay whether a local day begins there
 */
public record TimeTick(long ms, String label, boolean newDay) {}
