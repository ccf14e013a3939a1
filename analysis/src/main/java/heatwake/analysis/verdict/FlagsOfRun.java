package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.site.Heater;
import java.util.List;
import java.util.Optional;

/**
 * The flags of a run and what else tells whether one explains another.
 *
 * @param flags all that stand
 * @param duties what the running heater was seen to do
 * @param cycles of the compressor
 * @param heater its nameplate
 */
record FlagsOfRun(List<Flag> flags, List<Duty> duties, List<Cycle> cycles, Heater heater) {
  /** Some flags, beside what is known of the run. */
  static FlagsOfRun of(List<Flag> flags, Evidence evidence) {
    return new FlagsOfRun(
        flags, evidence.duty(), evidence.cycles(), evidence.recording().rig().heater());
  }

  /** Whether a rule's flag stands while another does. */
  boolean standsWith(Flag flag, String rule) {
    return flags.stream().anyMatch(one -> one.rule().equals(rule) && Overlap.any(one, flag));
  }

  /** The mean of the steady running during a flag; empty without any. */
  Optional<Duty> meanDuring(Flag flag) {
    List<Duty> during = DutyDuring.steady(flag, duties);
    return during.isEmpty() ? Optional.empty() : Optional.of(Duty.meanOf(during));
  }
}
