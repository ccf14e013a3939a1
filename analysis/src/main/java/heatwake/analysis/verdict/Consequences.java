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
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One cause, one flag: a flag that another explains is named in that one's evidence instead of
 * standing beside it. The {@linkplain ConsequenceTable table} says which rule explains which; here
 * is judged whether it does so for two flags of a run.
 */
public final class Consequences {
  private static final String LOW_FLOW = "low-heater-flow";

  private static final Set<String> TRIPPING = Set.of("short-cycling", "restart-too-soon");

  /** What can trip the circuit's own pressure switches. */
  private static final Set<String> TRIPPED_BY =
      Set.of("low-charge", "air-recirculation", "evaporator-approach", "frosting", "high-pressure");

  /** What starves the compressor: it draws less for it, not more. */
  private static final Set<String> STARVING =
      Set.of("low-charge", "air-recirculation", "evaporator-approach", "frosting");

  private static final Set<String> LITTLE_WATER = Set.of(LOW_FLOW, "falling-flow");

  /** What says that the circuit condenses higher than it should. */
  private static final Set<String> HIGH = Set.of("condenser-approach", "high-pressure");

  /** Part of a fall after which what begins is its consequence; ours. */
  private static final double CAME_TO_IT = 0.1;

  /** A stretch that ends within this part of a fall had most of the flow; ours. */
  private static final double AT_ITS_BEGINNING = 0.4;

  private static final Set<String> LOSSES = Set.of("low-heat", "low-cop");

  /**
   * A motor at low voltage takes more current for the same power. Power this far above the
   * nameplate's beyond doubt has a cause of its own; ours.
   */
  public static final double POWER_AS_PROMISED = 1.1;

  private final List<Flag> flags;
  private final List<Duty> duties;
  private final Heater heater;

  private Consequences(List<Flag> flags, List<Duty> duties, Heater heater) {
    this.flags = flags;
    this.duties = duties;
    this.heater = heater;
  }

  /**
   * The root flags, each with its consequences named.
   *
   * @param duties what the running heater was seen to do
   * @param heater its nameplate
   */
  static List<Flag> fold(List<Flag> flags, List<Duty> duties, Heater heater) {
    return new Consequences(flags, duties, heater).roots();
  }

  private List<Flag> roots() {
    Map<Flag, List<Flag>> following = new LinkedHashMap<>();
    for (Flag flag : flags) {
      root(flag)
          .ifPresent(root -> following.computeIfAbsent(root, key -> new ArrayList<>()).add(flag));
    }
    List<Flag> roots = new ArrayList<>();
    for (Flag flag : flags) {
      if (root(flag).isEmpty()) {
        roots.add(naming(flag, following.getOrDefault(flag, List.of())));
      }
    }
    return roots;
  }

  /** The flag that, at the end of the chain, explains this one. */
  private Optional<Flag> root(Flag flag) {
    Optional<Flag> cause = cause(flag);
    return cause.isEmpty() ? cause : Optional.of(root(cause.get()).orElseGet(cause::orElseThrow));
  }

  private Optional<Flag> cause(Flag flag) {
    for (Map.Entry<String, Set<String>> row : ConsequenceTable.explained().entrySet()) {
      if (row.getValue().contains(flag.rule())) {
        Optional<Flag> found =
            flags.stream()
                .filter(other -> other.rule().equals(row.getKey()) && explains(other, flag))
                .findFirst();
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private boolean explains(Flag cause, Flag flag) {
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
        && drawsMorePower(flag)) {
      return false;
    }
    if (LITTLE_WATER.contains(cause.rule())
        && flag.rule().equals("overcurrent")
        && !condensesHigh(flag)) {
      return false;
    }
    if (LITTLE_WATER.contains(cause.rule())
        && flag.rule().equals("condenser-approach")
        && !waterExplainsApproach(flag)) {
      return false;
    }
    if (STARVING.contains(cause.rule()) && flag.rule().equals("low-cop") && drawsMorePower(flag)) {
      return false;
    }
    return !cause.rule().equals("falling-flow") || !wasThereBefore(flag, cause);
  }

  private boolean waterExplainsApproach(Flag flag) {
    List<Duty> during = DutyDuring.steady(flag, duties);
    return during.isEmpty() || LittleWater.explainsApproach(Duty.meanOf(during), heater);
  }

  /**
   * Whether something was there before the flow can have brought it by falling: a flow too low from
   * the beginning, or heat and COP that were low in a stretch at the beginning, with the flow not
   * too low then.
   */
  private boolean wasThereBefore(Flag flag, Flag fall) {
    double shortMs = CAME_TO_IT * length(fall);
    if (flag.startMs() > fall.startMs() + shortMs) {
      return false;
    }
    if (flag.rule().equals(LOW_FLOW)) {
      return true;
    }
    boolean isAtOnce =
        DutyDuring.steady(flag, duties).stream()
            .anyMatch(duty -> duty.endMs() - fall.startMs() < AT_ITS_BEGINNING * length(fall));
    return LOSSES.contains(flag.rule())
        && isAtOnce
        && flags.stream()
            .noneMatch(
                one -> one.rule().equals(LOW_FLOW) && one.startMs() <= flag.startMs() + shortMs);
  }

  /**
   * Little water strains a motor only by the condensing pressure it brings: that is flagged, or
   * seen above what sound heaters have.
   */
  private boolean condensesHigh(Flag flag) {
    List<Duty> during = DutyDuring.steady(flag, duties);
    return flags.stream().anyMatch(one -> HIGH.contains(one.rule()) && Overlap.any(one, flag))
        || (!during.isEmpty()
            && Symptom.CONDENSING.grade(Duty.meanOf(during), heater).orElse(0) > 0);
  }

  private boolean drawsMorePower(Flag flag) {
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
