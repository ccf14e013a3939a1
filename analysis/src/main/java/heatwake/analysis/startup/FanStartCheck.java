package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/** The fan starts before the compressor (common practice: about 30 s after switching on). */
final class FanStartCheck implements Check {
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
    Optional<PhaseSpan> fan =
        evidence.phases().stream().filter(span -> span.phase() == Phase.FAN).findFirst();
    if (fan.isEmpty()) {
      return notSeen(
          CompressorStart.first(evidence).isPresent()
              ? "fan and compressor came on too close together to be told apart"
              : "a start of the fan");
    }
    PhaseSpan span = fan.get();
    StringBuilder text = new StringBuilder(60);
    text.append("fan on");
    double powerW =
        new Stretch(timeline.indexAt(span.startMs()) + 1, timeline.indexAt(span.endMs()))
            .mean(timeline.of(Channel.POWER));
    if (!Double.isNaN(powerW)) {
      text.append(" at ").append(Math.round(powerW)).append(" W");
    }
    PhaseSpan before = before(evidence, span);
    if (before != null && before.phase() == Phase.CIRCULATING) {
      text.append(", ")
          .append(Wording.duration(before.durationS()))
          .append(" after water was there");
    }
    return pass(span.startMs(), text.toString());
  }

  private static PhaseSpan before(Evidence evidence, PhaseSpan span) {
    int at = evidence.phases().indexOf(span);
    return at > 0 ? evidence.phases().get(at - 1) : null;
  }
}
