package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The fan starts before the compressor (common practice: about 30 s after switching on). What a
 * compressor leaves behind when it stops, a fan that runs on or a draw that fades, is no start.
 */
final class FanStartCheck implements Check {
  /** A single reading on the way up to the compressor's draw looks like a fan. */
  private static final int LEAST_READINGS = 2;

  /** Draw before and after a start of both at once is taken over this time, ms. */
  private static final long LOOK_MS = 60_000;

  /** An inrush is over after this time, ms. */
  private static final long INRUSH_MS = 20_000;

  /** Air cooled by less than this passes no working coil, K; ours (common practice: 4 to 10 K). */
  private static final double LEAST_COOLING_K = 1;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.FAN_START;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.POWER) && !timeline.has(Channel.CURRENT)) {
      return notMeasured("no power or current reading");
    }
    Channel electric = timeline.preferred(Channel.POWER, Channel.CURRENT);
    for (int k = 1; k < evidence.phases().size(); k++) {
      PhaseSpan before = evidence.phases().get(k - 1);
      PhaseSpan span = evidence.phases().get(k);
      boolean starts = span.phase() == Phase.FAN && !before.phase().compressorRuns();
      if (starts && isRead(timeline, electric, span)) {
        return pass(span.startMs(), alone(timeline, electric, before, span));
      }
    }
    return CompressorStart.first(evidence)
        .map(start -> notSeen(together(timeline, electric, start)))
        .orElseGet(() -> notSeen("a start of the fan"));
  }

  /** Read before it, so that it did start, and often enough to be more than a way up. */
  private static boolean isRead(Timeline timeline, Channel electric, PhaseSpan span) {
    int start = timeline.firstAtOrAfter(span.startMs());
    return span.endMs() - span.startMs() >= LEAST_READINGS * timeline.intervalMs(electric)
        && !Double.isNaN(timeline.of(electric)[start - 1]);
  }

  private static String alone(
      Timeline timeline, Channel electric, PhaseSpan before, PhaseSpan span) {
    // The first reading may lie on the way up.
    OptionalDouble draw =
        timeline.meanBetween(
            electric, span.startMs() + timeline.stepMs(), span.endMs() - timeline.stepMs());
    StringBuilder text = new StringBuilder(60);
    text.append("fan on");
    draw.ifPresent(si -> text.append(" at ").append(draw(electric, si)));
    text.append(" for ").append(Wording.duration(span.durationS()));
    if (before.phase() == Phase.CIRCULATING) {
      text.append(", ")
          .append(Wording.duration(before.durationS()))
          .append(" after water was there");
    }
    return text.toString();
  }

  private static String together(Timeline timeline, Channel electric, CompressorStart start) {
    StringBuilder text = new StringBuilder(120);
    text.append("fan and compressor came on within ")
        .append(Wording.duration(LEAST_READINGS * timeline.intervalMs(electric) / 1e3))
        .append(", too close together to be told apart");
    OptionalDouble before =
        timeline.meanBetween(
            electric, start.startMs() - LOOK_MS, start.startMs() - timeline.stepMs());
    OptionalDouble after =
        timeline.meanBetween(
            electric,
            start.startMs() + INRUSH_MS,
            Math.min(start.stopMs() - timeline.stepMs(), start.startMs() + INRUSH_MS + LOOK_MS));
    if (before.isPresent() && after.isPresent()) {
      text.append(": ")
          .append(draw(electric, before.getAsDouble()))
          .append(" before, ")
          .append(draw(electric, after.getAsDouble()))
          .append(" after");
    }
    air(timeline, start).ifPresent(text::append);
    return text.toString();
  }

  /** A fan shows in the air it cools: what the air does under a compressor that runs. */
  private static Optional<String> air(Timeline timeline, CompressorStart start) {
    long fromMs = start.startMs() + (start.stopMs() - start.startMs()) / 2;
    long toMs = start.stopMs() - timeline.stepMs();
    OptionalDouble in = timeline.meanBetween(Channel.AIR_IN, fromMs, toMs);
    OptionalDouble out = timeline.meanBetween(Channel.AIR_OUT, fromMs, toMs);
    return in.isPresent() && out.isPresent()
        ? Optional.of(
            "; the air enters with "
                + Wording.celsius(in.getAsDouble())
                + " and leaves with "
                + Wording.celsius(out.getAsDouble())
                + (in.getAsDouble() - out.getAsDouble() < LEAST_COOLING_K
                    ? ": look whether the fan turns"
                    : ""))
        : Optional.empty();
  }

  private static String draw(Channel electric, double si) {
    return electric == Channel.POWER
        ? Math.round(si) + " W"
        : String.format(Locale.ROOT, "%.2f A", si);
  }
}
