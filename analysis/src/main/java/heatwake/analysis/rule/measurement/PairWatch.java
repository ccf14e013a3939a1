package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The pipe pair under a heater that runs on unchanged: where its rise is one that no heat makes.
 *
 * @param timeline the readings
 * @param usualK its usual rise, zeroed, K
 * @param limitK what the pair leaves open, K
 * @param hasMeter whether the heater's own flow is measured
 * @param sides -1 where the rise is below, 1 where it is above what any heat makes, 0 where it is a
 *     usual one, 2 elsewhere
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, private to this package
record PairWatch(Timeline timeline, double usualK, double limitK, boolean hasMeter, byte[] sides) {
  static final byte COLD = -1;
  static final byte USUAL = 0;
  static final byte HOT = 1;
  private static final byte NOT_TOLD = 2;

  /**
   * So much running with a usual rise is needed to know it, s; ours. It has settled by then, and a
   * rise that turns round at equal duty is no matter of how well it is known.
   */
  private static final double KNOWN_FROM_S = 180;

  /** To tell three times of it, it must be known longer, s; ours. */
  private static final double KNOWN_WELL_FROM_S = 600;

  /**
   * Power and the high side, as far as read, within this share of the usual: the heater runs on; a
   * defrost changes both by more (ours).
   */
  private static final double RUNS_ON = 0.25;

  /** The same water: at least this share of the usual flow; ours. */
  private static final double SAME_FLOW = 0.7;

  /** No heater gives this many times its heat at equal power; ours. */
  private static final double TIMES = 3;

  /**
   * Empty where nothing tells that the heater runs on, too little of a usual rise was seen, or no
   * rise goes beyond it.
   */
  static Optional<PairWatch> of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    List<double[]> duties =
        List.of(Channel.POWER, Channel.PRESSURE_DISCHARGE).stream()
            .filter(timeline::has)
            .map(timeline::of)
            .toList();
    if (duties.isEmpty()) {
      return Optional.empty();
    }
    double[] rise = rise(evidence);
    double[] flow = timeline.of(Channel.FLOW_HEATER);
    boolean[] settled = settled(evidence);
    IntPredicate warms = i -> settled[i] && rise[i] > 0 && areKnown(duties, i);
    double knownS = IntStream.range(0, rise.length).filter(warms).count() * timeline.stepS();
    if (knownS < KNOWN_FROM_S) {
      return Optional.empty();
    }
    double usualK = median(rise, warms);
    double mostK = knownS < KNOWN_WELL_FROM_S ? Double.POSITIVE_INFINITY : TIMES * usualK;
    double limitK = Slip.limitK(evidence.recording().rig());
    // Nearly every run has none of it, and the medians of the duties are dear.
    IntPredicate cannotBe =
        i -> settled[i] && (rise[i] < -usualK - limitK || rise[i] > mostK + limitK);
    if (IntStream.range(0, rise.length).noneMatch(cannotBe)) {
      return Optional.empty();
    }
    double[] usualDuties = duties.stream().mapToDouble(duty -> median(duty, warms)).toArray();
    double leastFlow = SAME_FLOW * median(flow, warms);
    byte[] sides = new byte[rise.length];
    for (int i = 0; i < sides.length; i++) {
      boolean runsOn =
          settled[i]
              && areUsual(duties, usualDuties, i)
              && (!timeline.has(Channel.FLOW_HEATER) || flow[i] >= leastFlow);
      sides[i] =
          settled[i] && rise[i] > 0 && rise[i] < 2 * usualK + limitK
              ? USUAL
              : runsOn && cannotBe.test(i) ? (rise[i] < 0 ? COLD : HOT) : NOT_TOLD;
    }
    return Optional.of(
        new PairWatch(timeline, usualK, limitK, timeline.has(Channel.FLOW_HEATER), sides));
  }

  // Asked at every instant of a run, so without a stream.
  private static boolean areUsual(List<double[]> duties, double[] usual, int i) {
    for (int k = 0; k < usual.length; k++) {
      if (!(Math.abs(duties.get(k)[i] / usual[k] - 1) < RUNS_ON)) {
        return false;
      }
    }
    return true;
  }

  private static boolean areKnown(List<double[]> duties, int i) {
    for (double[] duty : duties) {
      if (Double.isNaN(duty[i])) {
        return false;
      }
    }
    return true;
  }

  /** Stretches with a rise that cannot be, short returns bridged. */
  List<Stretch> impossible(int bridge) {
    return Stretch.bridged(
        sides.length, i -> sides[i] == COLD || sides[i] == HOT, bridge, nothing -> false);
  }

  /** The first instant from which the rise is a usual one for so long; -1 if there is none. */
  int usualFrom(int from, int instants) {
    int row = 0;
    for (int i = from; i < sides.length; i++) {
      row = sides[i] == USUAL ? row + 1 : 0;
      if (row >= instants) {
        return i + 1 - instants;
      }
    }
    return -1;
  }

  /** Mean of a channel over the usual instants of a stretch; NaN without any. */
  double usualMean(double[] values, int from, int to) {
    return IntStream.range(Math.max(0, from), Math.min(values.length, to))
        .filter(i -> sides[i] == USUAL && !Double.isNaN(values[i]))
        .mapToDouble(i -> values[i])
        .average()
        .orElse(Double.NaN);
  }

  private static double[] rise(Evidence evidence) {
    double[] in = evidence.timeline().of(Channel.WATER_IN);
    double[] out = evidence.timeline().of(Channel.WATER_OUT);
    double zeroK = evidence.zero().map(zero -> zero.offsetK().value()).orElse(0.0);
    return IntStream.range(0, in.length).mapToDouble(i -> out[i] - in[i] - zeroK).toArray();
  }

  private static boolean[] settled(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    return SettledRunning.in(
        timeline, i -> phases.compressorRuns(i) && !phases.is(i, Phase.DEFROST) && !moves.no(i));
  }

  private static double median(double[] values, IntPredicate where) {
    double[] known =
        IntStream.range(0, values.length)
            .filter(where)
            .mapToDouble(i -> values[i])
            .filter(value -> !Double.isNaN(value))
            .toArray();
    return Median.withDefaults().evaluate(known);
  }
}
