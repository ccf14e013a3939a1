package heatwake.analysis.heat;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.timeline.Bridging;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Silences after which the compressor was found running: too long to be bridged, so that nobody
 * knows for how much of them it ran. No cycle covers them, and no total may pass over them in
 * silence.
 */
final class Silences {
  private static final double S_PER_MIN = 60;

  private Silences() {}

  /** Says how long those are together before which it did not run; empty if there are none. */
  static Optional<String> missing(Phases phases) {
    List<PhaseSpan> silences =
        phases.spans().stream()
            .filter(span -> isBeforeARunningHeater(span, phases))
            .filter(span -> !isAfterARunningHeater(span, phases))
            .toList();
    if (silences.isEmpty()) {
      return Optional.empty();
    }
    double seconds = silences.stream().mapToDouble(PhaseSpan::durationS).sum();
    return Optional.of(
        String.format(
            Locale.ROOT,
            "heat and electric energy: for %.0f min%s too little was read to tell what the heater did;"
                + " it ran when readings came back, and what it may have given before is not counted",
            seconds / S_PER_MIN,
            silences.size() == 1 ? "" : " in " + silences.size() + " silences"));
  }

  /**
   * How long the silences are together at both edges of which the compressor ran, s, without the
   * three minutes that are counted after every stop: it is taken to have run through, so that no
   * figure is called whole that leaves them out.
   */
  static double whileRunningS(Phases phases) {
    return phases.spans().stream()
        .filter(span -> isBeforeARunningHeater(span, phases) && isAfterARunningHeater(span, phases))
        .mapToDouble(span -> span.durationS() - Windows.RUN_ON_MS / 1e3)
        .sum();
  }

  private static boolean isAfterARunningHeater(PhaseSpan span, Phases phases) {
    return phases.cycles().stream()
        .anyMatch(
            cycle -> cycle.stopMs().isPresent() && cycle.stopMs().getAsLong() == span.startMs());
  }

  private static boolean isBeforeARunningHeater(PhaseSpan span, Phases phases) {
    return span.phase() == Phase.UNKNOWN
        && span.endMs() - span.startMs() > Bridging.LONGEST_MS
        && phases.cycles().stream().anyMatch(cycle -> isBackAt(cycle, span.endMs()));
  }

  private static boolean isBackAt(Cycle cycle, long timeMs) {
    return !cycle.startSeen() && cycle.startMs() == timeMs;
  }
}
