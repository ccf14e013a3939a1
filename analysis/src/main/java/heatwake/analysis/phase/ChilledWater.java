package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where a heater that just heated takes heat out of moving water for some minutes, and then heats
 * again: neither a heating nor a resting compressor does so, only one whose cycle is turned round
 * to melt ice. It is the leaving water that must fall, beyond what the pair of probes leaves open.
 */
final class ChilledWater {
  /** Chilled water shows for this long at least, and twice a reading (a defrost: 1 to 12 min). */
  private static final double LEAST_S = 60;

  private static final double MOST_S = 1200;

  /** A pair's zero found in place, and coarse digits, leave this open (ours, k = 3). */
  private static final double ZEROED_K = 0.2;

  private static final double BELIEVED_K = 3;

  /** And by this share of the rise before (ours). */
  private static final double LEAST_SHARE = 0.15;

  /** The entering water may move by this share of the fall (ours). */
  private static final double ENTERING_SHARE = 0.5;

  /** Heat is back from this share of the rise before (ours). */
  private static final double BACK_SHARE = 0.3;

  /**
   * A turned cycle takes no more from the water than it gave it, less the compressor's work; beyond
   * that by this much, K, with power and high side unchanged, a probe is off its pipe (ours).
   */
  private static final double BEYOND_K = 1;

  /**
   * Power and high side are held against so long before the rise may have begun to fall, s; ours.
   */
  private static final double LATELY_S = 120;

  /** Off a level by this share of the way to another (ours, above noise; as {@link Defrost}). */
  private static final double OFF_LEVEL = 0.08;

  private final Timeline timeline;
  private final Track compressor;
  private final double[] in;
  private final double[] difference;
  private final double openK;
  private final HeatAround around;

  private ChilledWater(
      Timeline timeline, Rig rig, Track compressor, Track rests, Track moves, WaterRise rise) {
    this.timeline = timeline;
    this.compressor = compressor;
    this.in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    this.difference = new double[in.length];
    for (int i = 0; i < in.length; i++) {
      boolean heard = !moves.no(i) && !Double.isNaN(rise.riseK()[i]);
      difference[i] = heard ? out[i] - in[i] : Double.NaN;
    }
    double zero = new RestingDifference(timeline, difference, moves).kelvin(rests, compressor);
    if (Double.isNaN(zero)) {
      double pairK = ProbeUncertainty.ofDifference(rig, Channel.WATER_IN, Channel.WATER_OUT);
      this.openK = Math.max(ZEROED_K, BELIEVED_K * pairK);
    } else {
      this.openK = ZEROED_K;
      for (int i = 0; i < difference.length; i++) {
        difference[i] -= zero;
      }
    }
    this.around = new HeatAround(timeline, compressor, difference);
  }

  /**
   * Stretches of chilled water between heating, in order.
   *
   * @param compressor whether it runs, as far as known; by effects alone it may seem to rest there
   * @param rests where something other than the water's temperatures shows that it rests
   */
  static List<Chill> of(
      Timeline timeline, Rig rig, Track compressor, Track rests, Track moves, WaterRise rise) {
    return new ChilledWater(timeline, rig, compressor, rests, moves, rise).find();
  }

  private List<Chill> find() {
    int least = Math.max(timeline.instants(LEAST_S), 2 * slowerInterval());
    double[] colder = Arrays.stream(difference).map(kelvin -> -kelvin).toArray();
    Track cold = Track.above(colder, openK, openK / 2);
    List<Chill> found = new ArrayList<>();
    for (Stretch one : Stretch.where(cold.size(), cold::yes)) {
      double before = around.meanBefore(difference, one.from(), 0);
      if (one.length() >= least
          && one.length() <= timeline.instants(MOST_S)
          && isDefrost(one, before)) {
        found.add(new Chill(one, left(one, before), back(one, before)));
      }
    }
    return found;
  }

  private int slowerInterval() {
    return Math.max(
        timeline.intervalInstants(Channel.WATER_IN), timeline.intervalInstants(Channel.WATER_OUT));
  }

  private boolean isDefrost(Stretch cold, double beforeK) {
    double coldK = cold.mean(difference);
    double fellK = beforeK - coldK;
    if (!(beforeK > openK && -coldK > LEAST_SHARE * beforeK)) {
      return false;
    }
    int from = Math.max(0, cold.from() - timeline.instants(HeatAround.BEFORE_S));
    int until = Math.max(from, cold.from() - timeline.instants(HeatAround.FELL_WITHIN_S));
    double enteredK = Stretch.mean(in, from, until);
    boolean isTooCold = -coldK > beforeK + BEYOND_K;
    // Of the last minutes: further back a run may still have been starting.
    Stretch lately = new Stretch(Math.max(from, until - timeline.instants(LATELY_S)), until);
    return !(isTooCold && HeldDuty.over(timeline, cold, lately))
        && Math.abs(cold.mean(in) - enteredK) < ENTERING_SHARE * fellK
        && (around.again(cold.to(), BACK_SHARE * beforeK) >= 0 || isCutOff(cold));
  }

  /** The instant at which the rise left its level of before. */
  private int left(Stretch cold, double beforeK) {
    double least = beforeK - 2 * OFF_LEVEL * (beforeK - cold.mean(difference));
    int i = cold.from();
    while (i > Math.max(0, cold.from() - timeline.instants(HeatAround.FELL_WITHIN_S))
        && !(difference[i - 1] >= least)) {
      i--;
    }
    return i;
  }

  /** The instant from which the rise only climbs. */
  private int back(Stretch cold, double beforeK) {
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = cold.from(); i < cold.to(); i++) {
      lowest = Math.min(lowest, difference[i]);
    }
    double leaves = lowest + OFF_LEVEL * (beforeK - lowest);
    int i = cold.to();
    while (i > cold.from() && !(difference[i - 1] <= leaves)) {
      i--;
    }
    return i;
  }

  /**
   * Whether the run ends before heat could come back. Where the compressor does not run on to the
   * end, as by effects alone it seems not to, the water has to be chilled within minutes of being
   * heated: a pipe of standing water takes an hour or so to cool.
   */
  private boolean isCutOff(Stretch cold) {
    if (!around.isCutOff(cold.to())) {
      return false;
    }
    if (compressor.yes(compressor.lastKnown())) {
      return true;
    }
    int heatedUntil = cold.from();
    while (heatedUntil > 0 && !compressor.yes(heatedUntil - 1)) {
      heatedUntil--;
    }
    int fell = timeline.instants(HeatAround.FELL_WITHIN_S) + slowerInterval();
    return heatedUntil > 0 && cold.from() - heatedUntil <= fell;
  }

  /** Where it is chilled, and where the rise left its level and began to come back. */
  record Chill(Stretch cold, int left, int back) {}
}
