package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import java.util.OptionalDouble;

/** The mean of a derived quantity over the time just gone. */
final class RecentMean {
  /** A slow logger gives few values; the mean of fewer than these is taken further back. */
  private static final int LEAST_VALUES = 3;

  private RecentMean() {}

  /** The mean, SI; empty if the quantity was not known in that time. */
  static OptionalDouble of(Findings findings, Trace.Kind kind, long nowMs, long lengthMs) {
    return findings.traces().stream()
        .filter(trace -> trace.kind() == kind)
        .findFirst()
        .map(trace -> of(trace, nowMs, Math.max(lengthMs, LEAST_VALUES * trace.stepMs())))
        .orElse(OptionalDouble.empty());
  }

  private static OptionalDouble of(Trace trace, long nowMs, long lengthMs) {
    double sum = 0;
    int count = 0;
    for (int i = trace.values().length - 1; i >= 0 && ageMs(trace, i, nowMs) <= lengthMs; i--) {
      if (!Double.isNaN(trace.values()[i])) {
        sum += trace.values()[i];
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
  }

  private static long ageMs(Trace trace, int i, long nowMs) {
    return nowMs - (trace.startMs() + i * trace.stepMs());
  }
}
