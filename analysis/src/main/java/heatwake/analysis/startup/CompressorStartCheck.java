package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.electrical.NoCompressor;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/** The compressor starts (common practice: a few seconds to a minute after the fan). */
final class CompressorStartCheck implements Check {
  /** Power is taken over this time after the inrush, s. */
  private static final long FROM_MS = 20_000;

  private static final long TO_MS = 80_000;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.COMPRESSOR_START;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!CompressorStart.canBeSeen(timeline)) {
      return notMeasured("no power, current, pressure or temperature pair");
    }
    Optional<CompressorStart> start = CompressorStart.first(evidence);
    if (start.isEmpty()) {
      if (new NoCompressor().evaluate(evidence) instanceof Outcome.Flagged flagged) {
        return fail(flagged.flags().get(0).endMs(), flagged.flags().get(0).evidence());
      }
      return notSeen(whyNoStart(evidence.phases()));
    }
    long startMs = start.get().startMs();
    StringBuilder text = new StringBuilder(60);
    text.append("compressor on");
    start
        .get()
        .fanMs()
        .ifPresent(
            fanMs ->
                text.append(' ')
                    .append(Wording.duration((startMs - fanMs) / 1e3))
                    .append(" after the fan"));
    timeline
        .meanBetween(Channel.POWER, startMs + FROM_MS, startMs + TO_MS)
        .ifPresent(powerW -> text.append(", drawing ").append(Wording.kilowatts(powerW)));
    return pass(startMs, text.toString());
  }

  private static String whyNoStart(List<PhaseSpan> phases) {
    if (phases.stream().noneMatch(span -> span.phase().compressorRuns())) {
      return "a start of the compressor";
    }
    return phases.get(0).phase().compressorRuns()
        ? "the compressor ran when the readings began"
        : "the compressor ran when the readings first told of it";
  }
}
