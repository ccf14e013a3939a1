package heatwake.collector.recorder;

import java.util.Optional;

/**
 * Whether a source of a run can be reached.
 *
 * @param name its name in the rig; a unit of a Modbus bus that was lost has an entry of its own
 * @param sinceMs since when it is so, UTC milliseconds
 * @param lostBecause why it cannot be reached; empty while it can
 */
public record SourceState(String name, long sinceMs, Optional<String> lostBecause) {}
