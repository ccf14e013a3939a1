package heatwake.analysis.rule.measurement;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A channel that stands still through a compressor start or stop that others followed. */
final class SleptThrough {
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

  /** Everything has followed a start or stop after this time; common practice, s. */
  private static final double FOLLOWED_AFTER_S = 480;

  private static final int WITNESSES = 2;

  /** A high side that changes by less than this share was not lifted; see no-pressure-rise. */
  private static final double LIFTS = 0.1;

  /**
   * A suction side that falls by this share, absolute, was pumped down: valves that pass all they
   * take in leave both sides together; ours.
   */
  private static final double PUMPED_DOWN = 0.3;

  /** Entering water that changes by less over a start is no leaving water, K; ours. */
  private static final double STAYS_K = 0.4;

  /** The entering water must have gone this far, K; ours, well beyond noise. */
  private static final double GONE_ON_K = 0.5;

  /** And this many digits of the leaving one, so that a coarse reading may stand; ours. */
  private static final double DIGITS = 10;

  private static final double ATMOSPHERE_PA = Atmosphere.standard(0).pa();

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final Track moves;

  SleptThrough(Timeline timeline, PhaseGrid phases, Track moves) {
    this.timeline = timeline;
    this.phases = phases;
    this.moves = moves;
  }

  /**
   * Which others followed a compressor start or stop through which the channel stood still, if it
   * is one that must follow. The leaving water must do so only while it moves.
   */
  Optional<String> followers(Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (!FOLLOWS.containsKey(channel)) {
      return Optional.empty();
    }
    int apart = timeline.instants(FOLLOWED_AFTER_S);
    return switches(frozen, apart).stream()
        .filter(i -> channel != Channel.WATER_OUT || !stands(i, apart))
        .flatMap(i -> witnesses(channel, i, apart).stream())
        .findFirst()
        .or(() -> new FlushedOutlet(timeline, phases).followers(frozen, this));
  }

  /** Who followed a start or stop within a time, if that is enough to tell that heat did. */
  Optional<String> witnesses(Channel accused, int at, int apart) {
    Set<Channel> followers = followers(accused, at, apart);
    return followers.size() >= WITNESSES && heats(accused, followers, at, apart)
        ? Optional.of(named(followers))
        : Optional.empty();
  }

  /**
   * How far the entering water went on, K, while the leaving one stood through a compressor start
   * or stop that neither shows: exchanged probes would show it at the other pipe, and a heater that
   * gives no heat sends the pool's own water on.
   */
  Optional<Double> inletWentOnK(Frozen frozen) {
    if (frozen.series().channel() != Channel.WATER_OUT) {
      return Optional.empty();
    }
    int apart = timeline.instants(FOLLOWED_AFTER_S);
    boolean sleeps =
        switches(frozen, apart).stream()
            .anyMatch(
                i -> !stands(i, apart) && Math.abs(change(Channel.WATER_IN, i, apart)) < STAYS_K);
    double wentOnK = PoolWaterPair.rangeK(timeline, moves::yes, Channel.WATER_IN, frozen);
    return sleeps && wentOnK > Math.max(GONE_ON_K, DIGITS * frozen.digitK())
        ? Optional.of(wentOnK)
        : Optional.empty();
  }

  /** Starts and stops of the compressor within a standstill after which it kept on for a while. */
  List<Integer> switches(Frozen frozen, int apart) {
    int from = timeline.indexAt(frozen.fromMs()) + 1;
    int to = timeline.indexAt(frozen.toMs()) - apart;
    List<Integer> switches = new ArrayList<>();
    for (int i = Math.max(from, 1); i < to; i++) {
      if (phases.compressorRuns(i) != phases.compressorRuns(i - 1) && isUnbroken(i, apart)) {
        switches.add(i);
      }
    }
    return switches;
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
  private boolean heats(Channel accused, Set<Channel> followers, int at, int apart) {
    if (accused == Channel.PRESSURE_DISCHARGE) {
      return (followers.contains(Channel.WATER_OUT) && riseFollows(at, apart))
          || isPumpedDown(at, apart);
    }
    double before = before(Channel.PRESSURE_DISCHARGE, at);
    double after = after(Channel.PRESSURE_DISCHARGE, at, apart);
    return !(Math.abs(after - before) < LIFTS * Math.max(before, after))
        || (isPumpedDown(at, apart) && followers.contains(Channel.AIR_OUT));
  }

  /** Whether the rise came with a start or went with a stop, the water moving. */
  private boolean riseFollows(int at, int apart) {
    double rise = change(Channel.WATER_OUT, at, apart) - change(Channel.WATER_IN, at, apart);
    double expected = phases.compressorRuns(at) ? rise : -rise;
    return !stands(at, apart) && expected > FOLLOWS.get(Channel.WATER_OUT);
  }

  private boolean isPumpedDown(int at, int apart) {
    double before = before(Channel.PRESSURE_SUCTION, at);
    double after = after(Channel.PRESSURE_SUCTION, at, apart);
    return Math.abs(after - before) > PUMPED_DOWN * (ATMOSPHERE_PA + Math.max(before, after));
  }

  private boolean isUnbroken(int at, int apart) {
    for (int i = at; i < at + apart; i++) {
      if (phases.compressorRuns(i) != phases.compressorRuns(at)) {
        return false;
      }
    }
    return true;
  }

  private boolean stands(int at, int apart) {
    for (int i = at; i < at + apart; i++) {
      if (moves.no(i)) {
        return true;
      }
    }
    return false;
  }

  private Set<Channel> followers(Channel accused, int at, int apart) {
    Set<Channel> followers = EnumSet.noneOf(Channel.class);
    FOLLOWS.forEach(
        (channel, leastChange) -> {
          if (channel != accused && Math.abs(change(channel, at, apart)) > leastChange) {
            followers.add(channel);
          }
        });
    return followers;
  }

  private double change(Channel channel, int at, int apart) {
    return after(channel, at, apart) - before(channel, at);
  }

  private double before(Channel channel, int at) {
    return Stretch.mean(timeline.of(channel), at - timeline.instants(60), at);
  }

  private double after(Channel channel, int at, int apart) {
    return Stretch.mean(timeline.of(channel), at + apart - timeline.instants(60), at + apart);
  }
}
