package heatwake.analysis.rule.control;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.OptionalDouble;

/** How sharply the readings show a compressor start or stop. */
final class CompressorSight {
  /** Channels that show it at once; a water temperature lags too far behind. */
  private static final List<Channel> SHARP =
      List.of(Channel.POWER, Channel.CURRENT, Channel.PRESSURE_DISCHARGE);

  private CompressorSight() {}

  /** Time between readings of the first channel that shows it, s; empty without such a channel. */
  static OptionalDouble resolutionS(Timeline timeline) {
    for (Channel channel : SHARP) {
      if (timeline.has(channel)) {
        double interval = timeline.intervalMs(channel) / 1e3;
        return OptionalDouble.of(Math.max(timeline.stepS(), interval));
      }
    }
    return OptionalDouble.empty();
  }

  /** Whether any channel that shows it at once reads at an instant. */
  static boolean reads(Timeline timeline, int instant) {
    return SHARP.stream().anyMatch(channel -> !Double.isNaN(timeline.of(channel)[instant]));
  }
}
