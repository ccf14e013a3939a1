package heatwake.analysis.rule.control;

import heatwake.analysis.electric.CountedPower;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** How sharply the readings show a compressor start or stop. */
final class CompressorSight {
  /** Channels that show it at once; a water temperature lags too far behind. */
  private static final List<Channel> SHARP =
      List.of(Channel.POWER, Channel.CURRENT, Channel.PRESSURE_DISCHARGE);

  /** By a counter, a run or rest that spans fewer of its readings is not sure to be one; ours. */
  private static final int COUNTED_INTERVALS = 2;

  private CompressorSight() {}

  /** Time between readings of the first channel that shows it, s; empty without such a channel. */
  static OptionalDouble everyS(Timeline timeline) {
    return Stream.concat(SHARP.stream(), Stream.of(Channel.ENERGY))
        .filter(timeline::has)
        .mapToDouble(channel -> timeline.intervalMs(channel) / 1e3)
        .map(intervalS -> Math.max(timeline.stepS(), intervalS))
        .findFirst();
  }

  /**
   * How long a start or stop stays open, s: the time between readings, and by a counter the time
   * that the running heater takes for one step of it besides. Empty without a channel that shows
   * it.
   */
  static OptionalDouble resolutionS(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    OptionalDouble everyS = everyS(timeline);
    if (!isCounted(timeline)) {
      return everyS;
    }
    return CountedPower.of(evidence.recording(), timeline)
        .map(
            counted ->
                OptionalDouble.of(
                    everyS.orElseThrow() + counted.stepJ() / whileRunning(evidence, counted)))
        .orElseGet(OptionalDouble::empty);
  }

  /** Mean power while the compressor runs, W; nothing where it never does. */
  private static double whileRunning(Evidence evidence, CountedPower counted) {
    PhaseGrid phases = evidence.phaseGrid();
    double[] powerW = counted.powerW();
    double sum = 0;
    int count = 0;
    for (int i = 0; i < powerW.length; i++) {
      if (phases.compressorRuns(i) && !Double.isNaN(powerW[i])) {
        sum += powerW[i];
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  /** Whether only the counter of a kWh meter shows the compressor. */
  static boolean isCounted(Timeline timeline) {
    return timeline.has(Channel.ENERGY) && SHARP.stream().noneMatch(timeline::has);
  }

  /** A run or rest shorter than this is not sure to be one, s. */
  static double leastS(Timeline timeline) {
    return isCounted(timeline) ? COUNTED_INTERVALS * timeline.intervalMs(Channel.ENERGY) / 1e3 : 0;
  }

  /**
   * The cycles whose start was seen; by a counter those of which run and rest last long enough to
   * show.
   */
  static List<Cycle> started(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    double leastMs = 1e3 * leastS(timeline);
    return evidence.cycles().stream()
        .filter(Cycle::startSeen)
        .filter(cycle -> lasts(cycle, leastMs))
        .toList();
  }

  private static boolean lasts(Cycle cycle, double leastMs) {
    if (cycle.stopMs().isEmpty()) {
      return true;
    }
    long stopMs = cycle.stopMs().getAsLong();
    return stopMs - cycle.startMs() >= leastMs
        && cycle.nextStartMs().orElse(Long.MAX_VALUE) - stopMs >= leastMs;
  }

  /** Whether any channel that shows it at once reads at an instant. */
  static boolean reads(Timeline timeline, int instant) {
    return SHARP.stream().anyMatch(channel -> !Double.isNaN(timeline.of(channel)[instant]));
  }
}
