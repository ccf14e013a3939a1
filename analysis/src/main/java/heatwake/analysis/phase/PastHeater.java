package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Times at which all water goes past the heater, as behind a shut valve: the water in it stands and
 * stays warm, though what comes back to the pool has lost its warmth. By the mixing balance the
 * return is warmed by the heater's share of its rise; where it is not, that share is zero:
 *
 * <pre>t_return - t_in = share (t_out - t_in)</pre>
 *
 * <p>Looked for between runs of the compressor, since after a start and a stop the probes follow
 * each other with their lags. Differences are taken as read: that the pair is not zeroed moves both
 * sides of the comparison by less than the limits leave.
 */
public final class PastHeater {
  /** A run this long shows the rises of the heater with water, s; common practice. */
  private static final double SETTLES_S = 300;

  /** Those rises are read over so long, s; ours. */
  private static final double LEVEL_S = 300;

  /** And not from the last of it, when the water may be gone already, s; ours. */
  private static final double BEFORE_STOP_S = 120;

  /** The probes have followed a stop after this: three lags of a clip, 60 s (common practice). */
  private static final double FOLLOWS_S = 180;

  /** It is looked at for at least so long from then on, s; ours. */
  private static final double SEEN_S = 180;

  /** A shorter run is a try that its protection ends, s; ours. */
  private static final double SHORT_RUN_S = 180;

  /** Rises of the leaving and of the returning water that can be told from the probes' errors. */
  private static final double LEAST_OUT_K = 1;

  private static final double LEAST_RETURN_K = 0.5;

  /** The heater's water has stayed warm above this share of its rise; ours. */
  private static final double STAYS_WARM = 0.5;

  /** The return has lost its warmth below this share of what the leaving water would give; ours. */
  private static final double LOST = 0.5;

  private final double[] in;
  private final double[] out;
  private final double[] mixed;
  private final Timeline timeline;
  private final IntPredicate runs;
  private double outK = Double.NaN;
  private double returnK = Double.NaN;

  private PastHeater(Timeline timeline, IntPredicate runs) {
    this.timeline = timeline;
    this.runs = runs;
    this.in = timeline.of(Channel.WATER_IN);
    this.out = timeline.of(Channel.WATER_OUT);
    this.mixed = timeline.of(Channel.WATER_RETURN);
  }

  /** Whether the probes allow it to be seen. */
  public static boolean canBeSeen(Timeline timeline) {
    return timeline.has(Channel.WATER_IN)
        && timeline.has(Channel.WATER_OUT)
        && timeline.has(Channel.WATER_RETURN);
  }

  /**
   * The times from a stop of the compressor to its next lasting run, short tries between them taken
   * in.
   *
   * @param runs whether the compressor runs at an instant
   */
  public static List<Stretch> of(Timeline timeline, IntPredicate runs) {
    return canBeSeen(timeline) ? new PastHeater(timeline, runs).find() : List.of();
  }

  private List<Stretch> find() {
    List<Stretch> found = new ArrayList<>();
    int lasts = timeline.instants(SETTLES_S);
    int shortRun = timeline.instants(SHORT_RUN_S);
    for (Stretch run : Stretch.where(timeline.size(), runs)) {
      if (run.length() >= lasts) {
        level(run);
      }
      int last = found.size() - 1;
      boolean goesOn = last >= 0 && found.get(last).to() == run.from() && run.length() <= shortRun;
      Stretch rest = new Stretch(run.to(), nextRun(run.to()));
      if (goesOn) {
        // What is tried in standing water is still without water.
        found.add(new Stretch(found.remove(last).from(), warmUntil(rest)));
      } else if (isPast(rest)) {
        found.add(new Stretch(rest.from(), warmUntil(rest)));
      }
    }
    return found;
  }

  private void level(Stretch run) {
    int to = run.to() - timeline.instants(BEFORE_STOP_S);
    int from =
        Math.max(run.from() + timeline.instants(BEFORE_STOP_S), to - timeline.instants(LEVEL_S));
    if (from < to) {
      outK = over(out, from, to);
      returnK = over(mixed, from, to);
    }
  }

  private int nextRun(int from) {
    int to = from;
    while (to < timeline.size() && !runs.test(to)) {
      to++;
    }
    return to;
  }

  private boolean isPast(Stretch rest) {
    int from = rest.from() + timeline.instants(FOLLOWS_S);
    return outK > LEAST_OUT_K
        && returnK > LEAST_RETURN_K
        && warmUntil(rest) - from >= timeline.instants(SEEN_S);
  }

  /** Up to where the heater's water stands warm while the return has nothing of it. */
  private int warmUntil(Stretch rest) {
    int wide = timeline.instants(60);
    int i = Math.min(rest.to(), rest.from() + timeline.instants(FOLLOWS_S));
    while (i < rest.to()) {
      int to = Math.min(rest.to(), i + wide);
      double standsK = over(out, i, to);
      double comesBackK = over(mixed, i, to);
      // Not known is not shown.
      if (!(standsK > STAYS_WARM * outK && comesBackK < LOST * returnK / outK * standsK)) {
        return i;
      }
      i = to;
    }
    return rest.to();
  }

  /** Mean of a water temperature above that of the entering water, K. */
  private double over(double[] water, int from, int to) {
    return Stretch.mean(water, from, to) - Stretch.mean(in, from, to);
  }
}
