package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;

/** Is shown readings one by one. */
public interface ReadingVisitor {
  /**
   * One reading.
   *
   * @param timeMs UTC milliseconds
   * @param value in the channel's stored unit
   */
  void reading(Channel channel, long timeMs, double value);

  /**
   * A reading of a channel that only a newer Heatwake knows.
   *
   * @param timeMs UTC milliseconds
   */
  default void ofUnknownChannel(long timeMs) {}
}
