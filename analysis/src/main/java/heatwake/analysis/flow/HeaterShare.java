package heatwake.analysis.flow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.zero.Pair;
import java.util.Arrays;
import java.util.Optional;

/**
 * Part of the total flow that goes through the heater, 0 to 1: the ratio of two flow meters where
 * both are clipped, else the mixing balance at the return. Bypass water keeps the entering
 * temperature, so the mixture's rise over the heater's is the share that carries it:
 *
 * <pre>share = (t_return - t_in) / (t_out - t_in)</pre>
 *
 * <p>Known only while the heater makes a rise that can be told from the probes' errors.
 */
public final class HeaterShare {
  /** Smoothing of the trace: a turned valve shows within half a minute; ours. */
  private static final double SMOOTHED_S = 30;

  /** Least rise that a share is computed from; ours. */
  private static final double LEAST_RISE_K = 0.4;

  /** The rise must be this many times its standard uncertainty; ours. */
  private static final double RISE_IN_UNCERTAINTIES = 4;

  private final MovingMean part;
  private final MovingMean whole;
  private final double least;
  private final Uncertainty uncertainty;
  private final double[] trace;

  /** Standard uncertainty of a share from the means of part and whole. */
  @FunctionalInterface
  private interface Uncertainty {
    double of(double part, double whole);
  }

  private HeaterShare(
      Timeline timeline, double[] part, double[] whole, double least, Uncertainty uncertainty) {
    this.part = new MovingMean(part);
    this.whole = new MovingMean(whole);
    this.least = least;
    this.uncertainty = uncertainty;
    this.trace = trace(timeline, part, whole);
  }

  /**
   * The share, if the probes allow it.
   *
   * @param out pair of {@code water-out} and {@code water-in}
   * @param mixed pair of {@code water-return} and {@code water-in}
   */
  public static Optional<HeaterShare> of(
      Timeline timeline, Rig rig, Optional<Pair> out, Optional<Pair> mixed) {
    if (timeline.has(Channel.FLOW_HEATER) && timeline.has(Channel.FLOW_TOTAL)) {
      return Optional.of(ofMeters(timeline, rig));
    }
    return out.isPresent() && mixed.isPresent()
        ? Optional.of(ofMixing(timeline, out.get(), mixed.get()))
        : Optional.empty();
  }

  private static HeaterShare ofMeters(Timeline timeline, Rig rig) {
    ProbeUncertainty heater = ProbeUncertainty.of(rig, Channel.FLOW_HEATER);
    ProbeUncertainty total = ProbeUncertainty.of(rig, Channel.FLOW_TOTAL);
    return new HeaterShare(
        timeline,
        timeline.of(Channel.FLOW_HEATER),
        timeline.of(Channel.FLOW_TOTAL),
        5e-3 / 60,
        (part, whole) ->
            Math.hypot(heater.at(part) / whole, part / whole * total.at(whole) / whole));
  }

  private static HeaterShare ofMixing(Timeline timeline, Pair out, Pair mixed) {
    double leastK = Math.max(LEAST_RISE_K, RISE_IN_UNCERTAINTIES * out.systematicK());
    return new HeaterShare(
        timeline,
        rise(timeline, mixed),
        rise(timeline, out),
        leastK,
        (part, whole) -> {
          double share = part / whole;
          double partK = mixed.ofRiseK(part);
          double wholeK = out.ofRiseK(whole);
          // Both rises carry the error of water-in: GUM eq. (16) with that covariance.
          double common = out.ofInK() * mixed.ofInK();
          double variance = partK * partK + share * share * wholeK * wholeK - 2 * share * common;
          return Math.sqrt(Math.max(0, variance)) / whole;
        });
  }

  /** Zeroed rise of a pair over a run. */
  public static double[] rise(Timeline timeline, Pair pair) {
    double[] in = timeline.of(Channel.WATER_IN);
    double[] hot = timeline.of(pair.hot());
    double[] rise = new double[in.length];
    for (int i = 0; i < rise.length; i++) {
      rise[i] = hot[i] - in[i] - pair.offsetK();
    }
    return rise;
  }

  private double[] trace(Timeline timeline, double[] parts, double[] wholes) {
    int half = (int) (SMOOTHED_S / 2 / timeline.stepS());
    double[] shares = new double[timeline.size()];
    Arrays.fill(shares, Double.NaN);
    for (int i = 0; i < shares.length; i++) {
      if (!Double.isNaN(parts[i]) && !Double.isNaN(wholes[i])) {
        int from = Math.max(0, i - half);
        int to = Math.min(shares.length, i + half + 1);
        double share = part.mean(from, to) / whole.mean(from, to);
        shares[i] = whole.mean(from, to) >= least ? Math.max(0, Math.min(1, share)) : Double.NaN;
      }
    }
    return shares;
  }

  /** Share at every instant, smoothed over half a minute, within 0 to 1; NaN where not known. */
  public double[] trace() {
    return trace;
  }

  /** Mean share from index {@code from} up to but not including {@code to}. */
  public Optional<Estimate> over(int from, int to) {
    double meanPart = part.mean(from, to);
    double meanWhole = whole.mean(from, to);
    if (!(meanWhole >= least) || Double.isNaN(meanPart)) {
      return Optional.empty();
    }
    return Optional.of(new Estimate(meanPart / meanWhole, uncertainty.of(meanPart, meanWhole)));
  }
}
