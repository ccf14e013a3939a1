package heatwake.analysis.phase;

import java.util.OptionalLong;

/**
 * One compressor cycle: from a compressor start to the next.
 *
 * @param startMs compressor start
 * @param stopMs compressor stop; empty if it still ran when the run ended
 * @param nextStartMs next start; empty for the last cycle
 * @param startSeen whether the start itself lies within the readings (false if the run began, or
 *     readings came back, with the compressor already running)
 */
public record Cycle(
    long startMs, OptionalLong stopMs, OptionalLong nextStartMs, boolean startSeen) {}
