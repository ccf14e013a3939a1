package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import java.util.Set;

/**
 * A run that may hold the same messages as a later one.
 *
 * @param run number of the run
 * @param channels those that get their readings the same way in both
 */
public record FedAlike(long run, Set<Channel> channels) {
  public FedAlike {
    channels = Set.copyOf(channels);
  }
}
