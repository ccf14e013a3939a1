package heatwake.analysis.finding;

/**
 * How well a channel was recorded.
 *
 * @param readings readings stored
 * @param coverage share of the run, 0 to 1, that lies no further than three usual intervals from
 *     one reading to the next
 * @param intervalS usual time between readings
 */
public record ChannelCoverage(int readings, double coverage, double intervalS) {}
