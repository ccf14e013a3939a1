package heatwake.analysis.rule.heat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import java.util.EnumSet;
import java.util.Set;

/** The readings on which heat against the nameplate rests in a run. */
final class HeatChannels {
  private HeatChannels() {}

  static Set<Channel> of(Evidence evidence, Channel... more) {
    Set<Channel> channels = EnumSet.of(Channel.WATER_IN, Channel.WATER_OUT);
    channels.add(evidence.timeline().preferred(Channel.FLOW_HEATER, Channel.FLOW_TOTAL));
    channels.add(evidence.timeline().preferred(Channel.AIR_IN, Channel.AIR_AMBIENT));
    channels.addAll(Set.of(more));
    return channels;
  }
}
