package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;

/**
 * An outlet that keeps its value through a stop of the compressor and on, though it has somewhere
 * to go whatever the water does: to the entering water where it moves, to the air where it stands.
 */
final class StopUnseen {
  /** It kept on for so long after the stop, s; ours: moving water has cooled within minutes. */
  private static final double AFTER_S = 600;

  /** It stood this far above the entering water, K and standard uncertainties of the pair; ours. */
  private static final double RISE_K = 1;

  private static final double BEYOND_DOUBT = 3;

  /** A pipe of standing water takes about an hour to the air, s; ours (see SlipAtRest). */
  private static final double COOLS_IN_S = 3600;

  /** So many digits of it standing water would have gone; ours. */
  private static final double DIGITS = 3;

  static final String LIMITS =
      "or kept its value for 10 min after the compressor stopped, at least 1 K and 3 standard"
          + " uncertainties from water-in, where standing water would have gone three digits to the"
          + " air (an hour's time constant: ours)";

  private StopUnseen() {}

  /** What tells so, if it does. */
  static Optional<String> words(Evidence evidence, PhaseGrid phases, Frozen frozen) {
    Timeline timeline = evidence.timeline();
    int from = Math.max(1, timeline.indexAt(frozen.fromMs()));
    int to = timeline.indexAt(frozen.toMs());
    int stop = to;
    while (stop > from && !phases.compressorRuns(stop - 1)) {
      stop--;
    }
    double keptS = (to - stop) * timeline.stepS();
    if (stop == from || keptS < AFTER_S) {
      return Optional.empty();
    }
    int minute = timeline.instants(60);
    Channel air = timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
    double inK = Stretch.mean(timeline.of(Channel.WATER_IN), to - minute, to);
    double airK = Stretch.mean(timeline.of(air), stop, to);
    double toInletK = Math.abs(frozen.value() - inK);
    double toAirK = Math.abs(frozen.value() - airK);
    double goneK = toAirK * (1 - Math.exp(-keptS / COOLS_IN_S));
    boolean tells =
        toInletK >= Math.max(RISE_K, BEYOND_DOUBT * pairK(evidence))
            && goneK >= DIGITS * frozen.digitK();
    return tells
        ? Optional.of(
            "kept on for "
                + Wording.duration(keptS)
                + " after the compressor stopped, "
                + Wording.kelvin(toInletK)
                + " from water-in and "
                + Wording.kelvin(toAirK)
                + " from the air")
        : Optional.empty();
  }

  private static double pairK(Evidence evidence) {
    return ProbeUncertainty.ofDifference(
        evidence.recording().rig(), Channel.WATER_IN, Channel.WATER_OUT);
  }
}
