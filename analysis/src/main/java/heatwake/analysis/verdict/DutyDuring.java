package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.StopReading;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.rule.Evidence;
import java.util.List;
import java.util.Map;

/** What the heater did during a flag. */
final class DutyDuring {
  private DutyDuring() {}

  /** The mean of its steady stretches; else what a stop within the flag shows. */
  static Duty of(Flag flag, Evidence evidence) {
    List<Duty> within = steady(flag, evidence.duty());
    if (!within.isEmpty()) {
      return Duty.meanOf(within);
    }
    return StopReading.of(
            evidence.recording().rig(),
            evidence.timeline(),
            evidence.phases(),
            evidence.cycles(),
            flag.startMs(),
            flag.endMs())
        .orElseGet(() -> new Duty(flag.startMs(), flag.endMs(), Map.of()));
  }

  /** Those of some steady stretches that share time with a flag. */
  static List<Duty> steady(Flag flag, List<Duty> duties) {
    return duties.stream()
        .filter(duty -> duty.endMs() >= flag.startMs() && duty.startMs() <= flag.endMs())
        .toList();
  }
}
