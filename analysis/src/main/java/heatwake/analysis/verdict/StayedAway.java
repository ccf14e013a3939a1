package heatwake.analysis.verdict;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * A compressor that stopped with the water still below its set temperature and did not come back
 * though water flowed. Somebody may have switched it off; it may have failed. However well it ran
 * before, it is not called sound then.
 */
final class StayedAway {
  /** Longer than any defrost, restart delay or thaw; ours, s. */
  private static final double AT_LEAST_S = 3600;

  /** The water is read over so long before the stop, s; ours. */
  private static final double BEFORE_S = 300;

  static final String NEXT_CHECK =
      "read the heater's fault memory, and ask whether its timer or somebody switched it off";

  private StayedAway() {}

  /** What was seen, in words; empty if nothing was. */
  static Optional<String> words(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    int stop = phases.size();
    while (stop > 0 && !phases.compressorRuns(stop - 1)) {
      stop--;
    }
    Stretch rest = new Stretch(stop, phases.size());
    if (stop == 0 || rest.durationS(timeline) < AT_LEAST_S || !waterFlows(timeline, rest)) {
      return Optional.empty();
    }
    HeatCall atStop = HeatCall.over(evidence, stop - timeline.instants(BEFORE_S), stop);
    HeatCall since = HeatCall.over(evidence, stop, phases.size());
    return atStop.calls() && since.calls()
        ? Optional.of(
            "the compressor stopped with the water "
                + Wording.kelvin(atStop.belowSetK().orElseThrow())
                + " below the set temperature and stayed away for "
                + Wording.duration(rest.durationS(timeline))
                + ", to the end of the run")
        : Optional.empty();
  }

  /** Whether some probe tells that water moves, and for all of it but the ends. */
  private static boolean waterFlows(Timeline timeline, Stretch rest) {
    Track moves = WaterMovement.of(timeline);
    return WaterMovement.moves(moves, rest);
  }
}
