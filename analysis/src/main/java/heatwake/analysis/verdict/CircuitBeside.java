package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the circuit shows beside a verdict that is about the site, not the machine. A pool that
 * loses its heat and a heater that ails may meet; where no flag has a word of the circuit, figures
 * that are not health are said all the same.
 */
final class CircuitBeside {
  /** Sides whose trouble lies outside the machine and leaves open how that fares. */
  private static final Set<Side> OF_THE_SITE = EnumSet.of(Side.POOL, Side.SCHEDULE);

  /** Sides of flags that have a word of the circuit, or of what it works between. */
  private static final Set<Side> OF_THE_MACHINE =
      EnumSet.of(Side.REFRIGERANT, Side.WATER, Side.AIRFLOW, Side.UNDECIDED);

  private CircuitBeside() {}

  /**
   * The figures that are not health; empty where there are none or a flag speaks of the machine.
   */
  static Optional<OutOfBand> of(Side side, List<Flag> flags, Evidence evidence) {
    if (!OF_THE_SITE.contains(side)
        || evidence.duty().isEmpty()
        || flags.stream().anyMatch(flag -> OF_THE_MACHINE.contains(flag.side()))) {
      return Optional.empty();
    }
    return Optional.of(
            OutOfBand.of(Duty.meanOf(evidence.duty()), evidence.recording().rig().heater()))
        .filter(outside -> !outside.isHealth());
  }
}
