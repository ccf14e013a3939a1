package heatwake.analysis.rule.heat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.ShortFan;
import heatwake.analysis.timeline.Timeline;
import java.util.OptionalDouble;

/** What the fan takes of the heater's power, as it shows for seconds ahead of the compressor. */
final class FanAhead {
  /** A single reading on the way up to the compressor's draw looks like a fan. */
  private static final int LEAST_READINGS = 2;

  private FanAhead() {}

  /** The least that was seen, W; empty where none was seen to lead. */
  static OptionalDouble watts(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.POWER)) {
      return OptionalDouble.empty();
    }
    long leastMs = LEAST_READINGS * timeline.intervalMs(Channel.POWER);
    return ShortFan.in(evidence).stream()
        .filter(ShortFan::leads)
        .map(ShortFan::stretch)
        .filter(fan -> fan.length() * timeline.stepMs() >= leastMs)
        .mapToDouble(fan -> fan.middle(timeline.of(Channel.POWER)))
        .min();
  }
}
