package heatwake.analysis.verdict;

import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Comparator;
import java.util.Optional;

/**
 * A compressor that never ran though water flowed that is below its set temperature. Whether it
 * failed or nobody switched it on the probes do not tell; a technician sees it at once.
 */
final class NeverCame {
  /** Longer than any delay of a control; ours, s. */
  private static final double AT_LEAST_S = 3600;

  static final String NEXT_CHECK =
      "see whether the heater is switched on, whether its timer and set temperature call for heat,"
          + " and what fault it shows; listen whether its fan turns";

  private NeverCame() {}

  /** What was seen of a run without any cycle, in words; empty if nothing was. */
  static Optional<String> words(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Track moves = WaterMovement.of(timeline);
    return Stretch.where(timeline.size(), moves::yes).stream()
        .max(Comparator.comparingInt(Stretch::length))
        .filter(flow -> flow.durationS(timeline) >= AT_LEAST_S)
        .flatMap(flow -> words(evidence, flow));
  }

  private static Optional<String> words(Evidence evidence, Stretch flow) {
    HeatCall call = HeatCall.over(evidence, flow.from(), flow.to());
    return call.calls()
        ? Optional.of(
            "the compressor never ran in "
                + Wording.duration(flow.durationS(evidence.timeline()))
                + " of flowing water, "
                + Wording.kelvin(call.belowSetK().orElseThrow())
                + " below the set temperature")
        : Optional.empty();
  }
}
