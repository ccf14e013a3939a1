package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether water moves through the heater, from every channel that can tell. Each channel votes; one
 * that measures the heater's own water counts more than one that only says the pump is switched on.
 * A meter that hangs at a value while the others see the water come to stand has no vote meanwhile.
 */
public final class WaterMovement {
  /** Water moves from this share of the usual flow upwards (ours: pump run-down ends below it). */
  private static final double MOVING_SHARE = 0.2;

  /** Hysteresis: it stands below this share (ours). */
  private static final double STANDING_SHARE = 0.12;

  /** Any flow under 3 L/min is a flow meter's zero, not a pool pump (ours). */
  public static final double LEAST_FLOW_M3_PER_S = 3e-3 / 60;

  /**
   * A filter inlet under 15 kPa gauge belongs to a pump at rest (common practice: 50 to 150 run).
   */
  private static final double LEAST_FILTER_PRESSURE_PA = 15e3;

  /** A probe that lags at the ends of a stretch still agrees (ours). */
  private static final double MOST_OF_A_STRETCH = 0.8;

  private WaterMovement() {}

  /** Whether water moves at each instant, as far as any channel tells. */
  public static Track of(Timeline timeline) {
    return timeline.once(WaterMovement.class, WaterMovement::asAllSay);
  }

  private static Track asAllSay(Timeline timeline) {
    int size = timeline.size();
    int[] votes = new int[size];
    Optional<Track> heater = believedFlow(timeline, Channel.FLOW_HEATER);
    // A meter that reads nothing from first to last may be dead.
    Optional<Track> working = heater.filter(Track::everYes);
    vote(votes, heater, working.isPresent() ? 4 : 2);
    vote(votes, state(timeline, Channel.FLOW_SWITCH), 2);
    votePool(votes, believedFlow(timeline, Channel.FLOW_TOTAL), working, 2);
    votePool(votes, state(timeline, Channel.PUMP_ON), working, 1);
    Optional<Track> pressure = filterPressure(timeline);
    votePool(votes, pressure, working, 1);
    vote(votes, pressure.map(WaterMovement::onlyNo), 1);
    Track moving = new Track(size);
    for (int i = 0; i < size; i++) {
      moving.set(i, (byte) Integer.signum(votes[i]));
    }
    return moving;
  }

  /** Whether every probe that tells of water says that it stands over a stretch. */
  public static boolean allStand(Timeline timeline, Stretch stretch) {
    return Stream.of(
            flow(timeline, Channel.FLOW_HEATER),
            flow(timeline, Channel.FLOW_TOTAL),
            state(timeline, Channel.FLOW_SWITCH),
            state(timeline, Channel.PUMP_ON))
        .flatMap(Optional::stream)
        .allMatch(track -> stands(track, stretch));
  }

  /**
   * What the others say of the water that a flow meter measures. The heater may be bypassed while
   * the pool's water goes on, so that its own probes say nothing of the whole flow.
   */
  public static Map<Channel, Track> beside(Channel flow, Timeline timeline) {
    Map<Channel, Track> said = new EnumMap<>(Channel.class);
    if (flow == Channel.FLOW_HEATER) {
      flow(timeline, Channel.FLOW_TOTAL).ifPresent(track -> said.put(Channel.FLOW_TOTAL, track));
      state(timeline, Channel.FLOW_SWITCH).ifPresent(track -> said.put(Channel.FLOW_SWITCH, track));
    }
    state(timeline, Channel.PUMP_ON).ifPresent(track -> said.put(Channel.PUMP_ON, track));
    filterPressure(timeline).ifPresent(track -> said.put(Channel.PRESSURE_FILTER, track));
    return said;
  }

  /** What the probes of the heater's own water say. */
  public static Map<Channel, Track> ofHeater(Timeline timeline) {
    Map<Channel, Track> said = new EnumMap<>(Channel.class);
    flow(timeline, Channel.FLOW_HEATER).ifPresent(track -> said.put(Channel.FLOW_HEATER, track));
    state(timeline, Channel.FLOW_SWITCH).ifPresent(track -> said.put(Channel.FLOW_SWITCH, track));
    return said;
  }

  /** Whether a probe says that the water stands over a stretch. */
  public static boolean stands(Track track, Stretch stretch) {
    return says(track, Track.NO, stretch);
  }

  /** Whether a probe says that the water moves over a stretch. */
  public static boolean moves(Track track, Stretch stretch) {
    return says(track, Track.YES, stretch);
  }

  private static boolean says(Track track, byte answer, Stretch stretch) {
    int count = 0;
    for (int i = stretch.from(); i < stretch.to(); i++) {
      count += track.at(i) == answer ? 1 : 0;
    }
    return count > MOST_OF_A_STRETCH * stretch.length();
  }

  private static void vote(int[] votes, Optional<Track> track, int weight) {
    track.ifPresent(
        said -> {
          for (int i = 0; i < votes.length; i++) {
            votes[i] += weight * said.at(i);
          }
        });
  }

  /**
   * The vote of a probe of the whole pool's water. Where the heater's own meter sees none, a valve
   * may be shut and all go past the heater: that the pool's water moves is then no news of the
   * heater's.
   *
   * @param meter what the heater's meter says, if it has seen water in this run
   */
  private static void votePool(
      int[] votes, Optional<Track> pool, Optional<Track> meter, int weight) {
    vote(
        votes,
        pool.map(said -> meter.map(own -> unlessOnlyItMoves(said, own)).orElse(said)),
        weight);
  }

  private static Track unlessOnlyItMoves(Track pool, Track heater) {
    Track heard = new Track(pool.size());
    for (int i = 0; i < pool.size(); i++) {
      heard.set(i, pool.yes(i) && heater.no(i) ? Track.UNKNOWN : pool.at(i));
    }
    return heard;
  }

  /** A pressure may also stand in front of a closed valve; without pressure nothing moves. */
  private static Track onlyNo(Track track) {
    Track no = new Track(track.size());
    for (int i = 0; i < track.size(); i++) {
      no.set(i, track.no(i) ? Track.NO : Track.UNKNOWN);
    }
    return no;
  }

  /** What a flow says, but for the times at which it hangs at a value while the water stands. */
  private static Optional<Track> believedFlow(Timeline timeline, Channel channel) {
    Optional<Track> said = flow(timeline, channel);
    said.ifPresent(track -> FrozenFlow.silence(track, channel, timeline));
    return said;
  }

  private static Optional<Track> flow(Timeline timeline, Channel channel) {
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    double[] flow = timeline.of(channel);
    double usual = LevelHistogram.of(flow).quantile(0.9);
    double on = Math.max(LEAST_FLOW_M3_PER_S, MOVING_SHARE * usual);
    double off = Math.max(LEAST_FLOW_M3_PER_S * 0.8, STANDING_SHARE * usual);
    return Optional.of(Track.above(flow, on, off));
  }

  private static Optional<Track> filterPressure(Timeline timeline) {
    if (!timeline.has(Channel.PRESSURE_FILTER)) {
      return Optional.empty();
    }
    double[] pressure = timeline.of(Channel.PRESSURE_FILTER);
    double usual = LevelHistogram.of(pressure).quantile(0.9);
    double on = Math.max(LEAST_FILTER_PRESSURE_PA, 0.4 * usual);
    return Optional.of(Track.above(pressure, on, 0.75 * on));
  }

  private static Optional<Track> state(Timeline timeline, Channel channel) {
    return timeline.has(channel)
        ? Optional.of(Track.above(timeline.of(channel), 0.5, 0.5))
        : Optional.empty();
  }
}
