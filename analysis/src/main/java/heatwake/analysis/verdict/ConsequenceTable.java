package heatwake.analysis.verdict;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Which rule's finding explains which other's, and on what conditions. */
public final class ConsequenceTable {
  private static final Consequent UNREACHABLE = Consequent.of("setpoint-unreachable");

  /** What any trouble of the machine brings. What the pool itself loses is not among it. */
  private static final List<Consequent> ANY_LOSS =
      List.of(Consequent.of("low-heat"), Consequent.of("low-cop"), UNREACHABLE);

  /** What a compressor loses that is starved. */
  private static final List<Consequent> STARVED =
      List.of(
          Consequent.of("low-heat"), Consequent.of("low-cop").on(new NoMorePower()), UNREACHABLE);

  /** What is lost with a flow that falls. */
  private static final List<Consequent> FALLEN =
      List.of(
          Consequent.of("low-heat").on(new NotLowBefore()),
          Consequent.of("low-cop").on(new NotLowBefore()),
          UNREACHABLE);

  /**
   * A starved or choked circuit trips its low or high pressure switch: that starts and stops it
   * too.
   */
  private static final Consequent CYCLES = Consequent.of("short-cycling").orLater();

  private static final Consequent RESTARTS = Consequent.of("restart-too-soon").orLater();

  /** Little water lets the circuit condense higher, and the compressor draws more for it. */
  private static final Consequent STRAINED = Consequent.of("overcurrent").on(new CondensesHigh());

  private static final Consequent APPROACH_OF_LITTLE_WATER =
      Consequent.of("condenser-approach").on(new WaterExplains());

  private static final Map<String, List<Consequent>> TABLE = Collections.unmodifiableMap(table());

  private ConsequenceTable() {}

  /** What each rule explains, by name of rule; the root causes first. */
  public static Map<String, List<Consequent>> explained() {
    return TABLE;
  }

  private static Map<String, List<Consequent>> table() {
    Map<String, List<Consequent>> table = new LinkedHashMap<>();
    table.put(
        "no-flow",
        and(
            ANY_LOSS,
            Consequent.of("low-heater-flow"),
            Consequent.of("high-pressure"),
            Consequent.of("condenser-approach"),
            Consequent.of("short-cycling")));
    table.put(
        "low-heater-flow",
        and(
            ANY_LOSS,
            APPROACH_OF_LITTLE_WATER,
            Consequent.of("high-pressure"),
            STRAINED,
            Consequent.of("short-cycling"),
            Consequent.of("no-compressor")));
    table.put(
        "falling-flow",
        and(
            FALLEN,
            Consequent.of("low-heater-flow").on(new FlowWasEnough()),
            APPROACH_OF_LITTLE_WATER,
            Consequent.of("high-pressure"),
            STRAINED));
    table.put(
        "no-pressure-rise",
        and(
            ANY_LOSS,
            Consequent.of("low-charge"),
            Consequent.of("condenser-approach"),
            Consequent.of("evaporator-approach"),
            Consequent.of("no-compressor")));
    table.put(
        "voltage-range",
        List.of(
            Consequent.of("overcurrent").on(new NoMorePower()), Consequent.of("no-compressor")));
    table.put(
        "low-charge",
        and(
            STARVED,
            Consequent.of("evaporator-approach"),
            Consequent.of("frosting"),
            CYCLES,
            RESTARTS));
    table.put(
        "air-recirculation",
        and(
            STARVED,
            Consequent.of("evaporator-approach"),
            Consequent.of("frosting"),
            CYCLES,
            RESTARTS));
    table.put("evaporator-approach", and(STARVED, Consequent.of("frosting"), CYCLES, RESTARTS));
    table.put("frosting", and(STARVED, CYCLES, RESTARTS));
    table.put(
        "condenser-approach",
        and(
            ANY_LOSS,
            Consequent.of("high-pressure").on(new CutsNoRun()),
            Consequent.of("overcurrent")));
    table.put("high-pressure", and(ANY_LOSS, Consequent.of("overcurrent"), CYCLES, RESTARTS));
    table.put("no-compressor", ANY_LOSS);
    table.put("short-cycling", ANY_LOSS);
    table.put("pump-hours", List.of(UNREACHABLE));
    table.put("heat-loss", List.of(UNREACHABLE));
    table.put("low-heat", List.of(Consequent.of("low-cop"), UNREACHABLE));
    table.put(
        "probe-fault",
        List.of(
            Consequent.of("probe-stuck"),
            Consequent.of("probe-slipped"),
            Consequent.of("data-gap")));
    table.put("probe-stuck", List.of(Consequent.of("data-gap")));
    return table;
  }

  private static List<Consequent> and(List<Consequent> losses, Consequent... others) {
    return Stream.concat(losses.stream(), Arrays.stream(others)).toList();
  }
}
