package heatwake.analysis.rule.water;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Water that stopped with the heater, told by the two pipes alone. Moving water carries the warmth
 * of the heater away within a minute or two of a stop, so that the pipes agree, and keeps the
 * temperature of the pool; water that stands keeps its warmth, and goes the way to the air by more
 * than any pool does.
 */
final class StandingPipes {
  /** Moving water has carried the warmth away by then, s; common practice: a minute or two. */
  private static final double CARRIED_AWAY_S = 300;

  /** It is looked at over so long before the stop and after that time, s; ours. */
  private static final double LOOKED_AT_S = 300;

  /** Standing water has kept this part of the rise by then (a pipe takes an hour or so); ours. */
  private static final double KEPT = 0.5;

  /** Standard uncertainties of the pair by which both have to be a rise at all. */
  private static final double BEYOND_DOUBT = 3;

  /**
   * The pipe is looked at again after so long, s, by when a pool has changed by 1.2 K at the most
   * (common practice: 1 kW/m2 on 1.5 m of water is 0.6 K/h).
   */
  private static final double LATER_S = 7200;

  private static final double NO_POOL_K = 2;

  /** Fresh water brings so much within so long, K and s; ours. */
  private static final double FRESH_K = 1;

  private static final double FRESH_S = 120;

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final MovingMean in;
  private final MovingMean out;
  private final double pairK;

  private StandingPipes(Evidence evidence) {
    timeline = evidence.timeline();
    phases = evidence.phaseGrid();
    in = new MovingMean(timeline.of(Channel.WATER_IN));
    out = new MovingMean(timeline.of(Channel.WATER_OUT));
    pairK =
        ProbeUncertainty.ofDifference(
            evidence.recording().rig(), Channel.WATER_IN, Channel.WATER_OUT);
  }

  /** Whether the probes for it are there: both pipes, and something that tells of a stop. */
  static boolean canBeSeen(Timeline timeline) {
    return timeline.has(Channel.WATER_IN)
        && timeline.has(Channel.WATER_OUT)
        && (timeline.has(Channel.POWER)
            || timeline.has(Channel.CURRENT)
            || timeline.has(Channel.PRESSURE_DISCHARGE));
  }

  /** The times, from a stop of the compressor on, in order. */
  static List<Stretch> afterStops(Evidence evidence) {
    StandingPipes pipes = new StandingPipes(evidence);
    List<Stretch> found = new ArrayList<>();
    for (Cycle cycle : evidence.cycles()) {
      if (cycle.stopMs().isPresent()) {
        pipes.from(pipes.timeline.firstAtOrAfter(cycle.stopMs().getAsLong())).ifPresent(found::add);
      }
    }
    return found;
  }

  private Optional<Stretch> from(int stop) {
    int looked = timeline.instants(LOOKED_AT_S);
    int after = stop + timeline.instants(CARRIED_AWAY_S);
    int to = freshWater(after);
    int later = stop + timeline.instants(LATER_S);
    if (stop < looked || later > to) {
      return Optional.empty();
    }
    double inK = in.mean(stop - looked, stop);
    double ranK = out.mean(stop - looked, stop) - inK;
    double keptK = out.mean(after, after + looked) - in.mean(after, after + looked);
    boolean keeps =
        keptK > Math.max(KEPT * ranK, BEYOND_DOUBT * pairK) && ranK > BEYOND_DOUBT * pairK;
    boolean leaves = Math.abs(in.mean(later - looked, later) - inK) > NO_POOL_K;
    return keeps && leaves ? Optional.of(new Stretch(stop, to)) : Optional.empty();
  }

  /** The first instant of fresh water, or of a compressor that runs; the run's end without any. */
  private int freshWater(int from) {
    int mean = timeline.instants(FRESH_S);
    int i = from;
    while (i < timeline.size()
        && !phases.compressorRuns(i)
        && !(Math.abs(change(in, i, mean)) >= FRESH_K)
        && !(Math.abs(change(out, i, mean)) >= FRESH_K)) {
      i++;
    }
    return i;
  }

  private static double change(MovingMean pipe, int i, int apart) {
    return pipe.mean(i, i + 1) - pipe.mean(i - apart, i - apart + 1);
  }
}
