package heatwake.analysis.rule.heat;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.descriptive.NaNPolicy;

/** What the fan takes of the heater's power, as it shows for seconds ahead of the compressor. */
final class FanAhead {
  /** A fan leads the compressor by no more than this (common practice), s. */
  private static final double LONGEST_S = 180;

  /** A single reading on the way up to the compressor's draw looks like a fan. */
  private static final int LEAST_READINGS = 2;

  private FanAhead() {}

  /** The least that was seen, W; empty where none was seen to lead. */
  static OptionalDouble watts(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    List<PhaseSpan> phases = evidence.phases();
    OptionalDouble least = OptionalDouble.empty();
    for (int k = 1; k + 1 < phases.size(); k++) {
      if (isLead(timeline, phases.get(k - 1), phases.get(k), phases.get(k + 1))) {
        double middle = middle(timeline, phases.get(k));
        least = OptionalDouble.of(Math.min(middle, least.orElse(middle)));
      }
    }
    return least;
  }

  private static boolean isLead(
      Timeline timeline, PhaseSpan before, PhaseSpan one, PhaseSpan next) {
    return one.phase() == Phase.FAN
        && !before.phase().compressorRuns()
        && next.phase().compressorRuns()
        && one.durationS() <= LONGEST_S
        && one.endMs() - one.startMs() >= LEAST_READINGS * timeline.intervalMs(Channel.POWER);
  }

  private static double middle(Timeline timeline, PhaseSpan span) {
    return Median.withDefaults()
        .with(NaNPolicy.EXCLUDE)
        .evaluate(
            Arrays.copyOfRange(
                timeline.of(Channel.POWER),
                timeline.firstAtOrAfter(span.startMs()),
                timeline.firstAtOrAfter(span.endMs())));
  }
}
