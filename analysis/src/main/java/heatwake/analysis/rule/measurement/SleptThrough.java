package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A channel that stands still through a compressor start or stop that others followed. */
final class SleptThrough {
  /** Everything has followed a start or stop after this time; common practice, s. */
  private static final double FOLLOWED_AFTER_S = 480;

  /** Entering water that changes by less over a start is no leaving water, K; ours. */
  private static final double STAYS_K = 0.4;

  /** The entering water must have gone this far, K; ours, well beyond noise. */
  private static final double GONE_ON_K = 0.5;

  /** And this many digits of the leaving one, so that a coarse reading may stand; ours. */
  private static final double DIGITS = 10;

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
    if (!SwitchOver.mustFollow(channel)) {
      return Optional.empty();
    }
    int apart = timeline.instants(FOLLOWED_AFTER_S);
    return switches(frozen, apart).stream()
        .filter(over -> channel != Channel.WATER_OUT || !over.waterStands())
        .flatMap(over -> over.witnesses(channel).stream())
        .findFirst()
        .or(() -> new FlushedOutlet(timeline, phases).followers(frozen, this));
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
                over -> !over.waterStands() && Math.abs(over.change(Channel.WATER_IN)) < STAYS_K);
    double wentOnK = PoolWaterPair.rangeK(timeline, moves::yes, Channel.WATER_IN, frozen);
    return sleeps && wentOnK > Math.max(GONE_ON_K, DIGITS * frozen.digitK())
        ? Optional.of(wentOnK)
        : Optional.empty();
  }

  /**
   * Starts and stops of the compressor within a standstill after which it kept on for a while.
   *
   * @param apart for so many instants
   */
  List<SwitchOver> switches(Frozen frozen, int apart) {
    int from = timeline.indexAt(frozen.fromMs()) + 1;
    int to = timeline.indexAt(frozen.toMs()) - apart;
    List<SwitchOver> switches = new ArrayList<>();
    for (int i = Math.max(from, 1); i < to; i++) {
      if (phases.compressorRuns(i) != phases.compressorRuns(i - 1) && isUnbroken(i, apart)) {
        switches.add(new SwitchOver(timeline, phases, moves, i, apart));
      }
    }
    return switches;
  }

  private boolean isUnbroken(int at, int apart) {
    for (int i = at; i < at + apart; i++) {
      if (phases.compressorRuns(i) != phases.compressorRuns(at)) {
        return false;
      }
    }
    return true;
  }
}
