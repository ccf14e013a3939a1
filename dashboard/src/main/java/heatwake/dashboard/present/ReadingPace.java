package heatwake.dashboard.present;

import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import java.util.Map;

/**
 * How often a channel is read, in words. A logger reads states as often as the rest; a state that
 * comes far more seldom is sent when it changes, and has no interval.
 */
public final class ReadingPace {
  /** As often as the rest within this factor; ours. */
  private static final double AS_OFTEN = 3;

  /** Without another channel to compare with, s; ours. */
  private static final double SELDOM_S = 60;

  private ReadingPace() {}

  /** {@code "one every 5.0 s"}, or {@code "on change"}. */
  public static String words(Channel channel, Map<Channel, ChannelCoverage> all) {
    double intervalS = all.get(channel).intervalS();
    return channel.quantity() == Quantity.STATE && intervalS > seldomS(all)
        ? "on change"
        : "one every " + Figure.fixed(intervalS, intervalS < 10 ? 1 : 0) + " s";
  }

  private static double seldomS(Map<Channel, ChannelCoverage> all) {
    return all.entrySet().stream()
        .filter(one -> one.getKey().quantity() != Quantity.STATE)
        .mapToDouble(one -> AS_OFTEN * one.getValue().intervalS())
        .max()
        .orElse(SELDOM_S);
  }
}
