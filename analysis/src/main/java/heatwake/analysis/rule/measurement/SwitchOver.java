package heatwake.analysis.rule.measurement;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a start or a stop of the compressor brought: the readings before it and once everything has
 * followed.
 *
 * @param timeline the readings
 * @param phases when the compressor ran
 * @param moves whether water moved
 * @param at first instant of running, or of rest
 * @param apart what follows has done so after so many instants
 */
record SwitchOver(Timeline timeline, PhaseGrid phases, Track moves, int at, int apart) {
  /** Others must have changed by this much over a compressor start or stop, SI; ours. */
  private static final Map<Channel, Double> FOLLOWS =
      new EnumMap<>(
          Map.of(
              Channel.WATER_OUT, 0.7,
              Channel.PRESSURE_DISCHARGE, 300e3,
              Channel.PRESSURE_SUCTION, 200e3,
              Channel.TEMP_DISCHARGE, 10.0,
              Channel.TEMP_LIQUID, 5.0,
              Channel.TEMP_SUCTION, 4.0,
              Channel.AIR_OUT, 2.0));

  private static final int WITNESSES = 2;

  /** A high side that changes by less than this share was not lifted; see no-pressure-rise. */
  private static final double LIFTS = 0.1;

  /**
   * A suction side that falls by this share, absolute, was pumped down: valves that pass all they
   * take in leave both sides together; ours.
   */
  private static final double PUMPED_DOWN = 0.3;

  private static final double ATMOSPHERE_PA = Atmosphere.standard(0).pa();

  /** Whether a channel is one that follows a compressor that heats. */
  static boolean mustFollow(Channel channel) {
    return FOLLOWS.containsKey(channel);
  }

  /** Who followed but the accused, if that is enough to tell that heat did. */
  Optional<String> witnesses(Channel accused) {
    Set<Channel> followers = followers(accused);
    return followers.size() >= WITNESSES && heats(accused, followers)
        ? Optional.of(named(followers))
        : Optional.empty();
  }

  private static String named(Set<Channel> followers) {
    return String.join(" and ", followers.stream().limit(WITNESSES).map(Channel::id).toList());
  }

  /**
   * Whether heat came or ceased: a compressor that lifts no pressure heats no water, however warm
   * its own pipes become. Where the high side is read it must have followed, or the suction side
   * shows the pumping and the air its cooling: in air far above the water a high side falls. Where
   * the high side itself is the one that stands, the water must show the heat or the suction side
   * the pumping.
   */
  private boolean heats(Channel accused, Set<Channel> followers) {
    if (accused == Channel.PRESSURE_DISCHARGE) {
      return (followers.contains(Channel.WATER_OUT) && riseFollows()) || isPumpedDown();
    }
    double before = before(Channel.PRESSURE_DISCHARGE);
    double after = after(Channel.PRESSURE_DISCHARGE);
    return !(Math.abs(after - before) < LIFTS * Math.max(before, after))
        || (isPumpedDown() && followers.contains(Channel.AIR_OUT));
  }

  /** Whether the rise came with a start or went with a stop, the water moving. */
  private boolean riseFollows() {
    double rise = change(Channel.WATER_OUT) - change(Channel.WATER_IN);
    double expected = phases.compressorRuns(at) ? rise : -rise;
    return !waterStands() && expected > FOLLOWS.get(Channel.WATER_OUT);
  }

  private boolean isPumpedDown() {
    double before = before(Channel.PRESSURE_SUCTION);
    double after = after(Channel.PRESSURE_SUCTION);
    return Math.abs(after - before) > PUMPED_DOWN * (ATMOSPHERE_PA + Math.max(before, after));
  }

  /** Whether the water stands at any time of it. */
  boolean waterStands() {
    for (int i = at; i < at + apart; i++) {
      if (moves.no(i)) {
        return true;
      }
    }
    return false;
  }

  private Set<Channel> followers(Channel accused) {
    Set<Channel> followers = EnumSet.noneOf(Channel.class);
    FOLLOWS.forEach(
        (channel, leastChange) -> {
          if (channel != accused && Math.abs(change(channel)) > leastChange) {
            followers.add(channel);
          }
        });
    return followers;
  }

  /** By how much a channel changed, SI; NaN where it is not known. */
  double change(Channel channel) {
    return after(channel) - before(channel);
  }

  private double before(Channel channel) {
    return Stretch.mean(timeline.of(channel), at - timeline.instants(60), at);
  }

  private double after(Channel channel) {
    return Stretch.mean(timeline.of(channel), at + apart - timeline.instants(60), at + apart);
  }
}
