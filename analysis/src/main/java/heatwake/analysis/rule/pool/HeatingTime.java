package heatwake.analysis.rule.pool;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.rule.Evidence;

/**
 * How long the heater heated in a run.
 *
 * @param onS compressor on, s
 * @param offS compressor at rest, s
 * @param dryS no water moving, s; part of {@code offS}
 */
record HeatingTime(double onS, double offS, double dryS) {
  static HeatingTime of(Evidence evidence) {
    double on = 0;
    double off = 0;
    double dry = 0;
    for (PhaseSpan span : evidence.phases()) {
      if (span.phase().compressorRuns()) {
        on += span.durationS();
      } else if (span.phase() != Phase.UNKNOWN) {
        off += span.durationS();
        dry += span.phase() == Phase.OFF ? span.durationS() : 0;
      }
    }
    return new HeatingTime(on, off, dry);
  }

  /** Whether what looked like running drew no more than a fan does (see the duty). */
  static boolean isIdle(Evidence evidence) {
    return !evidence.steady().isEmpty() && evidence.duty().isEmpty();
  }

  /** Part of the known time in which the compressor ran. */
  double share() {
    return onS + offS == 0 ? 0 : onS / (onS + offS);
  }

  /** Part of the known time in which no water moved. */
  double dryShare() {
    return onS + offS == 0 ? 0 : dryS / (onS + offS);
  }
}
