package heatwake.analysis.zero;

import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Takes the zero of a temperature pair in place, from every stretch in which water really
 * circulates, compressor and fan rest, and both readings have settled; where there is none, from
 * those in which no more than a {@link SmallLoad} draws. Standing water is never used: in two pipes
 * it differs honestly.
 *
 * <p>Stretches are combined as {@link CombinedZero} says. The zero removes what both probes keep
 * wrong alike at rest; what stays of their stated uncertainty is {@link #REMAINDER} and {@link
 * #GAIN_SHARE}.
 */
public final class Zeroing {
  /** Heat of the run-on still counts as delivered, so the zero begins after it. */
  static final long AFTER_STOP_MS = 180_000;

  /**
   * Part of the pair's independent uncertainty that a zero at one temperature cannot take away;
   * ours. A calibrated pair is usually taken as correlated by 0.95, which leaves 0.22; a zero taken
   * in place at the same water temperature is better than that.
   */
  static final double REMAINDER = 0.1;

  /** Difference of the two clips' response to the rise itself; ours. */
  static final double GAIN_SHARE = 0.005;

  /** Heat exchanged between two clips with nothing running; ours. */
  static final double AT_REST_K = 0.005;

  /** A drift under this is not worth a sentence; ours. */
  static final double WORTH_SAYING_K = 0.05;

  private final Timeline timeline;
  private final Rig rig;
  private final Channel hot;
  private final double[] differenceK;

  private Zeroing(Timeline timeline, Rig rig, Channel hot) {
    this.timeline = timeline;
    this.rig = rig;
    this.hot = hot;
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(hot);
    differenceK = new double[timeline.size()];
    for (int i = 0; i < differenceK.length; i++) {
      differenceK[i] = out[i] - in[i];
    }
  }

  /**
   * The zero of {@code hot} against {@code water-in}, if the run has a stretch to take it from.
   *
   * @param phases what the heater was doing
   * @param cycles compressor cycles, for the wait after each stop
   */
  public static Optional<ProbeZero> of(
      Timeline timeline, Rig rig, List<PhaseSpan> phases, List<Cycle> cycles, Channel hot) {
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(hot) || !restIsSeen(timeline)) {
      return Optional.empty();
    }
    return new Zeroing(timeline, rig, hot).zero(phases, cycles);
  }

  /** What to say of a zero that moved over the run; empty if it held. */
  public static Optional<String> driftInWords(ProbeZero zero) {
    Estimate drift = zero.driftK();
    boolean moved = Math.abs(drift.value()) > Math.max(WORTH_SAYING_K, drift.expanded());
    return moved
        ? Optional.of(
            String.format(
                    Locale.ROOT,
                    "zero of the pair: it moved by %+.2f K between its first and last stretch, which"
                        + " widens the heat's uncertainty; see whether a clip sits loose",
                    drift.value())
                .replace('-', '−'))
        : Optional.empty();
  }

  /**
   * Whether some probe other than the pair itself tells that the compressor rests: a zero taken
   * where the pair alone says so would be proved by itself.
   */
  public static boolean restIsSeen(Timeline timeline) {
    return restIsSeenAtOnce(timeline) || timeline.has(Channel.ENERGY);
  }

  /** The register of a kWh meter shows a rest only after a while. */
  private static boolean restIsSeenAtOnce(Timeline timeline) {
    return timeline.has(Channel.POWER)
        || timeline.has(Channel.CURRENT)
        || timeline.has(Channel.PRESSURE_DISCHARGE);
  }

  /** Why there is no zero and what would give one, in one sentence. */
  public static String whyNone(Timeline timeline) {
    if (!restIsSeen(timeline)) {
      return "zero of the pair: nothing shows that the compressor rests; clip power, current, energy"
          + " or pressure-discharge";
    }
    return "zero of the pair: no settled stretch with water circulating and the compressor at rest"
        + " (one that ends while water-out still comes down is none); let the pump run for "
        + (restIsSeenAtOnce(timeline) ? "ten minutes" : "half an hour")
        + " before the heater starts, or after it stops";
  }

  /** The pair with its zero, or without one. */
  public static Pair pair(Timeline timeline, Rig rig, Channel hot, Optional<ProbeZero> zero) {
    double pairK = pairK(timeline, rig, hot);
    double inK = probeK(timeline, rig, Channel.WATER_IN);
    return zero.map(
            one ->
                new Pair(
                    hot,
                    one.offsetK().value(),
                    Math.hypot(one.offsetK().standard(), REMAINDER * pairK),
                    GAIN_SHARE,
                    REMAINDER * inK))
        .orElseGet(() -> new Pair(hot, 0, pairK, 0, inK));
  }

  private Optional<ProbeZero> zero(List<PhaseSpan> phases, List<Cycle> cycles) {
    Settled settled =
        new Settled(
            differenceK,
            timeline.stepS(),
            Math.max(timeline.intervalInstants(Channel.WATER_IN), timeline.intervalInstants(hot)));
    double unseenK =
        Math.hypot(
            Math.hypot(resolutionK(Channel.WATER_IN), resolutionK(hot)) / Math.sqrt(12), AT_REST_K);
    double pairK = pairK(timeline, rig, hot);
    SettledRests rests = new SettledRests(timeline, hot, differenceK, settled, pairK);
    List<CombinedZero.Stretch> stretches = rests.in(circulating(phases), cycles);
    if (stretches.isEmpty()) {
      stretches = rests.in(SmallLoad.in(timeline, phases), cycles);
    }
    if (stretches.isEmpty()) {
      return Optional.empty();
    }
    CombinedZero combined = new CombinedZero(stretches);
    return Optional.of(
        new ProbeZero(
            combined.offsetK(unseenK), pairK, combined.driftK(unseenK), combined.spans()));
  }

  private static List<PhaseSpan> circulating(List<PhaseSpan> phases) {
    return phases.stream().filter(span -> span.phase() == Phase.CIRCULATING).toList();
  }

  /** Standard uncertainty of the difference that the probes' own uncertainties allow. */
  private static double pairK(Timeline timeline, Rig rig, Channel hot) {
    return Math.hypot(probeK(timeline, rig, Channel.WATER_IN), probeK(timeline, rig, hot));
  }

  private static double probeK(Timeline timeline, Rig rig, Channel channel) {
    ProbeUncertainty probe = ProbeUncertainty.of(rig, channel);
    if (probe.share() == 0) {
      return probe.absolute();
    }
    for (double value : timeline.of(channel)) {
      if (!Double.isNaN(value)) {
        return probe.atTemperatureK(value);
      }
    }
    return probe.absolute();
  }

  /** Step between the values a probe can show, where its noise does not blur it; else zero. */
  private double resolutionK(Channel channel) {
    return Resolution.of(timeline.of(channel));
  }
}
