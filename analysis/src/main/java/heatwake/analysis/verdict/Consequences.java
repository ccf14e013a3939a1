package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.site.Heater;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One cause, one flag: a flag that another explains is named in that one's evidence instead of
 * standing beside it. The table says which rule explains which.
 */
public final class Consequences {
  /** What any trouble of the machine brings. What the pool itself loses is not among it. */
  private static final Set<String> ANY_LOSS = Set.of("low-heat", "low-cop", "setpoint-unreachable");

  private static final Set<String> TRIPPING = Set.of("short-cycling", "restart-too-soon");

  /** What can trip the circuit's own pressure switches. */
  private static final Set<String> TRIPPED_BY =
      Set.of("low-charge", "air-recirculation", "evaporator-approach", "frosting", "high-pressure");

  private static final Set<String> LITTLE_WATER = Set.of("low-heater-flow", "falling-flow");

  /** What says that the circuit condenses higher than it should. */
  private static final Set<String> HIGH = Set.of("condenser-approach", "high-pressure");

  /** Part of a fall after which what begins is its consequence; ours. */
  private static final double CAME_TO_IT = 0.1;

  /**
   * A motor at low voltage takes more current for the same power. Power this far above the
   * nameplate's beyond doubt has a cause of its own; ours.
   */
  public static final double POWER_AS_PROMISED = 1.1;

  /** What follows from what, the root causes first. */
  private static final Map<String, Set<String>> TABLE = table();

  private Consequences() {}

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

  /** Which rules a rule explains, for the documentation; causes in the order of the table. */
  public static Map<String, Set<String>> explained() {
    return Collections.unmodifiableMap(TABLE);
  }

  /**
   * The root flags, each with its consequences named.
   *
   * @param duties what the running heater was seen to do
   * @param heater its nameplate
   */
  static List<Flag> fold(List<Flag> flags, List<Duty> duties, Heater heater) {
    Map<Flag, List<Flag>> following = new LinkedHashMap<>();
    for (Flag flag : flags) {
      root(flag, flags, duties, heater)
          .ifPresent(root -> following.computeIfAbsent(root, key -> new ArrayList<>()).add(flag));
    }
    List<Flag> roots = new ArrayList<>();
    for (Flag flag : flags) {
      if (root(flag, flags, duties, heater).isEmpty()) {
        roots.add(naming(flag, following.getOrDefault(flag, List.of())));
      }
    }
    return roots;
  }

  /** The flag that, at the end of the chain, explains this one. */
  private static Optional<Flag> root(
      Flag flag, List<Flag> flags, List<Duty> duties, Heater heater) {
    Optional<Flag> cause = cause(flag, flags, duties, heater);
    return cause.isEmpty()
        ? cause
        : Optional.of(root(cause.get(), flags, duties, heater).orElseGet(cause::orElseThrow));
  }

  private static Optional<Flag> cause(
      Flag flag, List<Flag> flags, List<Duty> duties, Heater heater) {
    for (Map.Entry<String, Set<String>> row : TABLE.entrySet()) {
      if (row.getValue().contains(flag.rule())) {
        Optional<Flag> found =
            flags.stream()
                .filter(
                    other ->
                        other.rule().equals(row.getKey())
                            && explains(other, flag, flags, duties, heater))
                .findFirst();
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static boolean explains(
      Flag cause, Flag flag, List<Flag> flags, List<Duty> duties, Heater heater) {
    if (cause.isANote()) {
      return false;
    }
    boolean ofProbes = cause.side() == Side.MEASUREMENT;
    // A switch that trips may do so only once the circuit no longer comes to a steady state.
    boolean cameLater =
        TRIPPING.contains(flag.rule())
            && TRIPPED_BY.contains(cause.rule())
            && flag.startMs() >= cause.startMs();
    if ((!Overlap.any(cause, flag) && !cameLater)
        || (ofProbes && Collections.disjoint(cause.channels(), flag.channels()))) {
      return false;
    }
    if (cause.rule().equals("voltage-range")
        && flag.rule().equals("overcurrent")
        && drawsMorePower(flag, duties)) {
      return false;
    }
    if (LITTLE_WATER.contains(cause.rule())
        && flag.rule().equals("overcurrent")
        && !condensesHigh(flag, flags, duties, heater)) {
      return false;
    }
    boolean cameToIt = flag.startMs() > cause.startMs() + CAME_TO_IT * length(cause);
    // Flow that was too low from the beginning did not get there by falling.
    return !flag.rule().equals("low-heater-flow")
        || !cause.rule().equals("falling-flow")
        || cameToIt;
  }

  /**
   * Little water strains a motor only by the condensing pressure it brings: that is flagged, or
   * seen above what sound heaters have.
   */
  private static boolean condensesHigh(
      Flag flag, List<Flag> flags, List<Duty> duties, Heater heater) {
    List<Duty> during = DutyDuring.steady(flag, duties);
    return flags.stream().anyMatch(one -> HIGH.contains(one.rule()) && Overlap.any(one, flag))
        || (!during.isEmpty()
            && Symptom.CONDENSING.grade(Duty.meanOf(during), heater).orElse(0) > 0);
  }

  private static boolean drawsMorePower(Flag flag, List<Duty> duties) {
    List<Duty> during = DutyDuring.steady(flag, duties);
    return !during.isEmpty()
        && Duty.meanOf(during)
            .of(DutyFigure.POWER_RATIO)
            .filter(ratio -> Doubt.above(ratio, POWER_AS_PROMISED))
            .isPresent();
  }

  private static long length(Flag flag) {
    return flag.endMs() - flag.startMs();
  }

  private static Flag naming(Flag flag, List<Flag> following) {
    if (following.isEmpty()) {
      return flag;
    }
    Severity gravest =
        following.stream().map(Flag::severity).reduce(flag.severity(), Consequences::graver);
    return new Flag(
        flag.rule(),
        flag.side(),
        gravest,
        flag.startMs(),
        flag.endMs(),
        flag.evidence()
            + Consequence.LEAD
            + following.stream()
                .map(one -> one.rule() + " (" + one.evidence() + ")")
                .collect(Collectors.joining("; ")),
        flag.causes(),
        flag.nextCheck(),
        flag.channels(),
        following.stream().map(one -> new Consequence(one.rule(), one.evidence())).toList());
  }

  private static Severity graver(Severity one, Severity other) {
    return one.compareTo(other) >= 0 ? one : other;
  }
}
