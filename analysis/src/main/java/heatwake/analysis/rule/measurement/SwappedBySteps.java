package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Exchanged probes where nothing tells when the compressor runs: for hours water-out reads below
 * water-in in moving water, and when that comes and goes it is water-in that steps. No pool's water
 * jumps to and fro while what leaves the heater keeps still; a machine that cools moves the other.
 *
 * @param startMs first such time, UTC milliseconds
 * @param endMs end of the last
 * @param riseK mean rise of these times
 * @param seconds their length
 * @param steps how often water-in stepped
 */
record SwappedBySteps(long startMs, long endMs, double riseK, double seconds, int steps) {
  static final String LIMITS =
      "Where none of them is read, a rise below −1 K and −3.5 standard uncertainties in moving water"
          + " for an hour, in times of 10 min and more, that comes or goes within 10 min at least"
          + " twice with water-in making 70 % of the step, and a rise as far above zero for less than"
          + " a tenth of that (ours).";

  private static final double LEAST_S = 3600;
  private static final double LASTS_S = 600;
  private static final double STEPS_WITHIN_S = 600;
  private static final double MEAN_S = 120;
  private static final double STEP_SHARE = 0.7;
  private static final int STEPS = 2;
  private static final double WARM_SHARE = 0.1;

  /**
   * Looks for it.
   *
   * @param limitK how far below zero no heater's rise is
   */
  static Optional<SwappedBySteps> in(Evidence evidence, double limitK) {
    Timeline timeline = evidence.timeline();
    Track moves = WaterMovement.of(timeline);
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    double[] rise = IntStream.range(0, in.length).mapToDouble(i -> out[i] - in[i]).toArray();
    IntPredicate isCold = i -> moves.yes(i) && rise[i] < -limitK;
    IntPredicate rests = i -> moves.yes(i) && Math.abs(rise[i]) < limitK / 2;
    int mean = timeline.instants(MEAN_S);
    List<Stretch> cold =
        Stretch.bridged(rise.length, isCold, mean, rests).stream()
            .filter(one -> one.durationS(timeline) >= LASTS_S)
            .toList();
    double coldS = cold.stream().mapToDouble(one -> one.durationS(timeline)).sum();
    long warm = IntStream.range(0, rise.length).filter(i -> rise[i] > limitK).count();
    if (coldS < LEAST_S || warm * timeline.stepS() > WARM_SHARE * coldS) {
      return Optional.empty();
    }
    int within = timeline.instants(STEPS_WITHIN_S);
    int steps = 0;
    for (Stretch one : cold) {
      int after = first(rests, one.to(), Math.min(rise.length - mean, one.to() + within));
      boolean goes =
          after >= 0
              && inletSteps(
                  in,
                  rise,
                  new Stretch(one.to() - mean, one.to()),
                  new Stretch(after, after + mean));
      int before = last(rests, Math.max(mean, one.from() - within), one.from());
      boolean comes =
          before >= 0
              && inletSteps(
                  in,
                  rise,
                  new Stretch(before - mean, before),
                  new Stretch(one.from() + mean, one.from() + 2 * mean));
      steps += (goes ? 1 : 0) + (comes ? 1 : 0);
    }
    if (steps < STEPS) {
      return Optional.empty();
    }
    double riseK =
        cold.stream().mapToDouble(one -> one.mean(rise) * one.durationS(timeline)).sum() / coldS;
    return Optional.of(
        new SwappedBySteps(
            timeline.timeMs(cold.get(0).from()),
            timeline.timeMs(cold.get(cold.size() - 1).to() - 1),
            riseK,
            coldS,
            steps));
  }

  private static boolean inletSteps(double[] in, double[] rise, Stretch from, Stretch to) {
    double step = to.mean(rise) - from.mean(rise);
    return (from.mean(in) - to.mean(in)) / step > STEP_SHARE;
  }

  private static int first(IntPredicate holds, int from, int to) {
    return IntStream.range(from, Math.max(from, to)).filter(holds).findFirst().orElse(-1);
  }

  private static int last(IntPredicate holds, int from, int to) {
    return IntStream.range(from, Math.max(from, to)).filter(holds).max().orElse(-1);
  }

  /** What was seen, in words. */
  String words() {
    return "water-out reads "
        + Wording.kelvin(-riseK)
        + " below water-in over "
        + Wording.duration(seconds)
        + " of moving water, and "
        + steps
        + " times it was water-in that stepped by so much";
  }
}
