package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Heat that no heater gives, whatever ails it. Flags that rest on such a heat are handed from the
 * machine or the pool to the measurement.
 *
 * <ul>
 *   <li>Below nothing: a compressor that runs adds its own work to the water, so however little the
 *       coil takes from the air, the water leaves no colder than it came (first law). Only a
 *       machine set to cooling cools it; its air then leaves warmer than it enters.
 *   <li>Above {@value #MOST_RATIO} of the nameplate's at these conditions: the displacement of the
 *       compressor and the density of the vapour it draws set the heat, and plates are tolerated to
 *       be 5 % off; the fastest inverters run a third above their rated speed (common practice).
 *   <li>Grown by a third within the run, to more than {@value #MORE_THAN_PROMISED} of the
 *       nameplate's, while the power stayed: heat is power times COP, and no repair that happens by
 *       itself lifts the COP above the promised one.
 *   <li>With a COP that cannot be ({@link ImpossibleCop}), or cannot be beside such a heat ({@link
 *       MoreForLess}).
 * </ul>
 */
public final class ImpossibleHeat {
  /** Share of the nameplate's heat above which none is believed; ours, reasoned above. */
  public static final double MOST_RATIO = 1.5;

  /** A heater of this share of the nameplate's heat gives more than its plate; ours. */
  private static final double MORE_THAN_PROMISED = 1.2;

  /** Growth of the heat beyond what a run's weather and the nameplate's slope leave open; ours. */
  private static final double GROWN = 1.33;

  /** Power that stays, as a share; ours. */
  private static final double STAYS = 0.08;

  /** Air that leaves this much warmer than it entered: the machine cools the pool, K; ours. */
  private static final double COOLING_K = 1;

  /** Flags that rest on the heat. */
  public static final Set<String> RESTS_ON_HEAT = Set.of("low-heat", "low-cop", "heat-loss");

  /**
   * Flags that rest on one probe of the pair where the pool has none of its own: a clip that makes
   * a heat which cannot be is no thermometer of the pool.
   */
  private static final Set<String> RESTS_ON_A_PIPE_PROBE = Set.of("setpoint-unreachable");

  private static final String ZERO_THE_PAIR =
      "Zero the probe pair: let the water circulate for 10 min with the compressor at rest. ";

  private static final String NEXT_CHECK =
      "Compare both water probes in one cup and the flow meter with a bucket or a second meter;"
          + " hold the rig's nameplate against the heater's.";

  /** From when to when a flag was up: flags of one time rest on one heat. */
  private record Time(long startMs, long endMs) {}

  private final Evidence evidence;
  private final Optional<String> grown;
  private final Optional<String> cop;
  private final Map<Time, Optional<String>> judged = new HashMap<>();

  ImpossibleHeat(Evidence evidence) {
    this.evidence = evidence;
    this.grown = grown(evidence);
    this.cop = ImpossibleCop.why(evidence);
  }

  /**
   * Why the heat that a flag rests on cannot be, in words; empty if it can, or it rests on none.
   */
  Optional<String> why(Flag flag) {
    if (RESTS_ON_A_PIPE_PROBE.contains(flag.rule())
        && !evidence.timeline().has(Channel.WATER_POOL)) {
      return whyOfRun().map(why -> "that is read by a pipe probe, and " + why);
    }
    return RESTS_ON_HEAT.contains(flag.rule())
        ? judged.computeIfAbsent(
            new Time(flag.startMs(), flag.endMs()), time -> why(DutyDuring.of(flag, evidence)))
        : Optional.empty();
  }

  /** Why heat and COP of the whole run cannot be, in words; empty if they can or are not known. */
  Optional<String> whyOfRun() {
    return evidence.duty().isEmpty() ? cop : why(Duty.meanOf(evidence.duty()));
  }

  /** Why the heat of a stretch cannot be, in words; empty if it can. */
  Optional<String> why(Duty duty) {
    Optional<Estimate> ratio = duty.of(DutyFigure.HEAT_RATIO);
    if (ratio.isEmpty()) {
      return cop;
    }
    String heat =
        "heat of " + Wording.percent(ratio.get()) + " of the nameplate's cannot be right: ";
    if (Doubt.above(ratio.get(), MOST_RATIO)) {
      return Optional.of(heat + "no heater gives half as much again as its plate");
    }
    if (Doubt.below(ratio.get(), 0) && !cools(duty)) {
      return Optional.of(heat + "a heater whose compressor runs does not cool its water");
    }
    return grown.or(() -> cop).or(() -> MoreForLess.why(duty));
  }

  /** Two stretches of the run between which the heat grew though the power stayed. */
  private static Optional<String> grown(Evidence evidence) {
    List<Duty> judged =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.HEAT_RATIO, DutyFigure.POWER_RATIO))
            .toList();
    for (int later = 1; later < judged.size(); later++) {
      for (Duty before : judged.subList(0, later)) {
        Duty after = judged.get(later);
        double heat = value(after, DutyFigure.HEAT_RATIO);
        double was = value(before, DutyFigure.HEAT_RATIO);
        double power = value(after, DutyFigure.POWER_RATIO) / value(before, DutyFigure.POWER_RATIO);
        if (heat > MORE_THAN_PROMISED && heat > GROWN * was && Math.abs(power - 1) < STAYS) {
          return Optional.of(
              String.format(
                  Locale.ROOT,
                  "heat that grows from %.0f %% to %.0f %% of the nameplate's while the power stays"
                      + " cannot be right: a water probe drifts or the flow meter misleads",
                  100 * was,
                  100 * heat));
        }
      }
    }
    return Optional.empty();
  }

  private static double value(Duty duty, DutyFigure figure) {
    return duty.of(figure).orElseThrow().value();
  }

  /** The flag on the side of the measurement, with the reason. */
  Flag handed(Flag flag, String why) {
    return new Flag(
        flag.rule(),
        Side.MEASUREMENT,
        Severity.WARNING,
        flag.startMs(),
        flag.endMs(),
        flag.evidence() + ". But " + why,
        List.of(
            "inlet and outlet probe exchanged, or one of them off its pipe",
            "flow meter with the wrong scaling, unit or direction",
            "nameplate in the rig is another heater's"),
        nextCheck(),
        flag.channels());
  }

  /** What to do about a heat that cannot be: what costs nothing first. */
  String nextCheck() {
    return evidence.zero().isEmpty() ? ZERO_THE_PAIR + NEXT_CHECK : NEXT_CHECK;
  }

  private boolean cools(Duty duty) {
    OptionalDouble in =
        evidence.timeline().meanBetween(Channel.AIR_IN, duty.startMs(), duty.endMs());
    OptionalDouble out =
        evidence.timeline().meanBetween(Channel.AIR_OUT, duty.startMs(), duty.endMs());
    return in.isPresent() && out.isPresent() && out.getAsDouble() - in.getAsDouble() > COOLING_K;
  }
}
