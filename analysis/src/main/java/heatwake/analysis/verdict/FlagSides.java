package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.rule.Evidence;
import java.util.Optional;
import java.util.Set;

/**
 * On whose side each flag is. Most rules know it themselves; where several causes look alike the
 * table finds it, by what the heater did while the flag was up, and what rests on a heat that
 * cannot be is the measurement's.
 */
final class FlagSides {
  /**
   * Rules whose flag says that something is wrong with the circuit, but not on which side: low heat
   * and COP by nature, approaches and high pressure because several causes move them alike.
   */
  private static final Set<String> BY_TABLE =
      Set.of("low-heat", "low-cop", "condenser-approach", "evaporator-approach", "high-pressure");

  private final Evidence evidence;
  private final ImpossibleHeat impossible;

  FlagSides(Evidence evidence) {
    this.evidence = evidence;
    this.impossible = new ImpossibleHeat(evidence);
  }

  /** The flag on the side that it is on. */
  Flag sided(Flag flag) {
    Optional<String> why = impossible.why(flag);
    if (why.isPresent()) {
      return impossible.handed(flag, why.get());
    }
    return isByTable(flag) ? flag.onSide(attribution(flag).side()) : flag;
  }

  /** Whether a flag was given to the measurement for a heat that cannot be. */
  boolean isHanded(Flag flag) {
    return impossible.why(flag).isPresent();
  }

  /** Whether the table says on which side a flag is. */
  boolean isByTable(Flag flag) {
    return BY_TABLE.contains(flag.rule()) && !isHanded(flag);
  }

  /** What the table finds for the time of a flag. */
  Attribution attribution(Flag flag) {
    return Attribution.of(DutyDuring.of(flag, evidence), evidence.recording().rig().heater());
  }

  /** What to do about a heat that cannot be. */
  String heatCheck() {
    return impossible.nextCheck();
  }

  /** Why heat and COP of the run cannot be, in words; empty if they can or are not known. */
  Optional<String> heatDoubt() {
    return impossible.whyOfRun();
  }
}
