package heatwake.analysis.coverage;

import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Says which sources could not be reached for long or to the end of the run. A channel that never
 * gave a reading has no gap that a rule could see.
 */
public final class LostSources {
  /** Away for less than this in all, and back, is no loss worth a sentence, s; ours. */
  private static final double LONG_S = 60;

  private LostSources() {}

  /** One sentence for each such source. */
  public static List<String> of(Recording recording) {
    Map<String, List<RunEvent>> bySource = new LinkedHashMap<>();
    for (RunEvent event : recording.events()) {
      if (event.kind() == EventKind.SOURCE_LOST) {
        bySource.computeIfAbsent(event.subject(), first -> new ArrayList<>()).add(event);
      }
    }
    List<String> sentences = new ArrayList<>();
    bySource.forEach(
        (source, losses) -> {
          RunEvent last = losses.get(losses.size() - 1);
          double totalS = losses.stream().mapToDouble(one -> lengthS(one, recording)).sum();
          if (isToTheEnd(last, recording)) {
            sentences.add(
                String.format(
                    "source %s: lost from %s to the end of the run: %s",
                    source, Wording.moment(last.startMs()), last.text()));
          } else if (totalS > LONG_S) {
            sentences.add(told(source, losses, totalS, recording));
          }
        });
    return sentences;
  }

  private static String told(
      String source, List<RunEvent> losses, double totalS, Recording recording) {
    RunEvent longest = losses.get(0);
    for (RunEvent loss : losses) {
      longest = lengthS(loss, recording) > lengthS(longest, recording) ? loss : longest;
    }
    String from = Wording.moment(longest.startMs());
    return losses.size() == 1
        ? String.format(
            "source %s: lost for %s from %s: %s",
            source, Wording.duration(totalS), from, longest.text())
        : String.format(
            "source %s: lost %d times, together %s, the longest from %s: %s",
            source, losses.size(), Wording.duration(totalS), from, longest.text());
  }

  /** A run ends at its last reading, its losses when the recorder stopped. */
  private static boolean isToTheEnd(RunEvent loss, Recording recording) {
    return loss.endMs().isEmpty() || loss.endMs().getAsLong() > recording.endMs();
  }

  private static double lengthS(RunEvent loss, Recording recording) {
    return (loss.endMs().orElse(Math.max(loss.startMs(), recording.endMs())) - loss.startMs())
        / 1e3;
  }
}
