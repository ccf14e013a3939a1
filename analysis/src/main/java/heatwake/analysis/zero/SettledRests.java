package heatwake.analysis.zero;

import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * The settled parts of rests in which water moves, each with what the rest leaves open of the zero.
 *
 * @param hot the probe that is held against {@code water-in}
 * @param differenceK hot less entering water at every instant
 * @param settled finds where it has settled
 * @param pairK what the probes' own uncertainties allow
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, private to this package
record SettledRests(
    Timeline timeline, Channel hot, double[] differenceK, Settled settled, double pairK) {

  /** One for each span that has a settled part. */
  List<CombinedZero.Stretch> in(List<PhaseSpan> spans, List<Cycle> cycles) {
    List<CombinedZero.Stretch> stretches = new ArrayList<>();
    for (PhaseSpan span : spans) {
      long stopMs = lastStopBefore(cycles, span.startMs());
      long leftAloneMs = Math.max(span.startMs(), stopMs);
      int first = timeline.firstAtOrAfter(Math.max(span.startMs(), stopMs + Zeroing.AFTER_STOP_MS));
      int end = timeline.firstAtOrAfter(span.endMs());
      boolean fades =
          span.startMs() - stopMs < Zeroing.AFTER_STOP_MS
              && Fading.of(differenceK, timeline.firstAtOrAfter(leftAloneMs), end).goesOn();
      settled
          .within(fades ? end : first, end)
          .map(part -> stretch(part, leftAloneMs))
          // What the pipes' own slide leaves open beyond the probes' word tells no zero.
          .filter(one -> one.residueK() < pairK)
          .ifPresent(stretches::add);
    }
    return stretches;
  }

  /** What exchanger and sliding pipes may add errs to one side in all stretches alike. */
  private CombinedZero.Stretch stretch(Settled.Part part, long leftAloneMs) {
    ProbeZero.Span span =
        new ProbeZero.Span(
            timeline.timeMs(part.from()), timeline.timeMs(part.to() - 1), part.differenceK());
    double residueK =
        Residue.meanK((span.startMs() - leftAloneMs) / 1e3, (span.endMs() - leftAloneMs) / 1e3);
    double slideK =
        Slide.standardK(
            timeline.of(Channel.WATER_IN),
            timeline.of(hot),
            part.from(),
            part.to(),
            timeline.stepS());
    return new CombinedZero.Stretch(span, Math.hypot(residueK, slideK));
  }

  private static long lastStopBefore(List<Cycle> cycles, long timeMs) {
    long last = Long.MIN_VALUE / 2;
    for (Cycle cycle : cycles) {
      if (cycle.stopMs().isPresent() && cycle.stopMs().getAsLong() <= timeMs) {
        last = Math.max(last, cycle.stopMs().getAsLong());
      }
    }
    return last;
  }
}
