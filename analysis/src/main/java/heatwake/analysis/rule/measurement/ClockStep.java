package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.RunEvent;
import java.util.List;
import java.util.regex.Pattern;

/** The logger's clock jumped. */
public final class ClockStep implements Rule {
  /** A hundred seconds or more. */
  private static final Pattern SECONDS = Pattern.compile("(\\d{3,}(?:\\.\\d+)?) s\\b");

  @Override
  public String id() {
    return "clock-step";
  }

  @Override
  public String summary() {
    return "The logger's clock jumped.";
  }

  @Override
  public String needs() {
    return "a recording made by the recorder, which watches the steady clock beside the wall clock,"
        + " or an imported file whose clock was set back";
  }

  @Override
  public String limits() {
    return "Every step the recorder noted, and every time at which the clock of an imported file was"
        + " set back. One set forward there shows as a data gap.";
  }

  /** Steps are noted in seconds; minutes and hours read better. */
  private static String readable(String text) {
    return SECONDS
        .matcher(text)
        .replaceAll(found -> Wording.toTheSecond(Double.parseDouble(found.group(1))));
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<RunEvent> steps =
        evidence.recording().events().stream()
            .filter(event -> event.kind() == EventKind.CLOCK_STEP)
            .toList();
    if (steps.isEmpty()) {
      return Outcome.clear();
    }
    RunEvent first = steps.get(0);
    RunEvent last = steps.get(steps.size() - 1);
    long count = steps.stream().mapToLong(RunEvent::count).sum();
    return Outcome.flagged(
        new Flag(
            id(),
            Side.MEASUREMENT,
            Severity.WARNING,
            first.startMs(),
            last.endMs().orElse(last.startMs()),
            (count == 1
                    ? "The clock jumped once: "
                    : "The clock jumped " + count + " times, first: ")
                + readable(first.text()),
            List.of(
                "clock set by hand or by the network while recording",
                "clock battery of the logger empty",
                "computer slept"),
            "Set the clock from the network before recording; times after the jump are right, the"
                + " time between is not."));
  }
}
