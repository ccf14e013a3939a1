package heatwake.analysis.site;

import java.util.OptionalDouble;

/**
 * What the analysis needs to know of a probe.
 *
 * @param uncertainty standard uncertainty of one reading
 * @param intervalS stated time between readings, where the rig states one
 */
public record Probe(ReadingUncertainty uncertainty, OptionalDouble intervalS) {}
