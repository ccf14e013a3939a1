package heatwake.analysis.verdict;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which rule's finding explains which other's. */
public final class ConsequenceTable {
  /** What any trouble of the machine brings. What the pool itself loses is not among it. */
  private static final Set<String> ANY_LOSS = Set.of("low-heat", "low-cop", "setpoint-unreachable");

  private static final Map<String, Set<String>> TABLE = Collections.unmodifiableMap(table());

  private ConsequenceTable() {}

  /** What each rule explains, by name of rule; the root causes first. */
  public static Map<String, Set<String>> explained() {
    return TABLE;
  }

  private static Map<String, Set<String>> table() {
    Map<String, Set<String>> table = new LinkedHashMap<>();
    table.put(
        "no-flow", with("low-heater-flow", "high-pressure", "condenser-approach", "short-cycling"));
    // Little water lets the circuit condense higher, and the compressor draws more for it.
    table.put(
        "low-heater-flow",
        with(
            "condenser-approach",
            "high-pressure",
            "overcurrent",
            "short-cycling",
            "no-compressor"));
    table.put(
        "falling-flow",
        with("low-heater-flow", "condenser-approach", "high-pressure", "overcurrent"));
    table.put(
        "no-pressure-rise",
        with("low-charge", "condenser-approach", "evaporator-approach", "no-compressor"));
    table.put("voltage-range", Set.of("overcurrent", "no-compressor"));
    // A starved or choked circuit trips its low or high pressure switch: that starts and stops it
    // too.
    table.put(
        "low-charge", with("evaporator-approach", "frosting", "short-cycling", "restart-too-soon"));
    table.put(
        "air-recirculation",
        with("evaporator-approach", "frosting", "short-cycling", "restart-too-soon"));
    table.put("evaporator-approach", with("frosting", "short-cycling", "restart-too-soon"));
    table.put("frosting", with("short-cycling", "restart-too-soon"));
    table.put("condenser-approach", with("high-pressure", "overcurrent"));
    table.put("high-pressure", with("overcurrent", "short-cycling", "restart-too-soon"));
    table.put("no-compressor", Set.of("setpoint-unreachable", "low-heat", "low-cop"));
    table.put("short-cycling", Set.of("low-heat", "low-cop", "setpoint-unreachable"));
    table.put("pump-hours", Set.of("setpoint-unreachable"));
    table.put("heat-loss", Set.of("setpoint-unreachable"));
    table.put("low-heat", Set.of("low-cop", "setpoint-unreachable"));
    table.put("probe-fault", Set.of("probe-stuck", "probe-slipped", "data-gap"));
    table.put("probe-stuck", Set.of("data-gap"));
    return table;
  }

  private static Set<String> with(String... rules) {
    return Stream.concat(ANY_LOSS.stream(), Arrays.stream(rules))
        .collect(Collectors.toUnmodifiableSet());
  }
}
