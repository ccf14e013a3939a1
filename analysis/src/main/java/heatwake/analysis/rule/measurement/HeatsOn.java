package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A flow that reads nothing while the heater heats on. A heater without water trips within a minute
 * or two (common practice), and the little water that stands in it would boil: one kilowatt warms
 * five litres by 3 K a minute. A rise that holds for a quarter of an hour is carried away by water.
 */
final class HeatsOn {
  /** A compressor that runs longer than this has water, s; ours, as in no-flow. */
  private static final double CANNOT_RUN_DRY_S = 900;

  /** Water follows a compressor start within this time; common practice, s. */
  private static final double SETTLES_S = 300;

  /** The smallest rise of a pool heater is about 1 K (common practice). */
  private static final double LEAST_RISE_K = 1;

  /** Standing water in a running heater is soon warmer than this above the pool, K; ours. */
  private static final double MOST_RISE_K = 12;

  /** The rise holds within this share of itself; ours, as in no-flow. */
  private static final double HOLDS_SHARE = 0.3;

  /** So many are named. */
  private static final int NAMED = 2;

  private HeatsOn() {}

  /** How the water is seen to move meanwhile, if it is. */
  static Optional<String> witnesses(Timeline timeline, PhaseGrid phases, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if ((channel != Channel.FLOW_HEATER && channel != Channel.FLOW_TOTAL) || frozen.value() != 0) {
      return Optional.empty();
    }
    int from = timeline.indexAt(frozen.fromMs());
    int to = timeline.indexAt(frozen.toMs()) + 1;
    for (Stretch run :
        Stretch.where(phases.size(), i -> i >= from && i < to && phases.compressorRuns(i))) {
      if (run.durationS(timeline) > CANNOT_RUN_DRY_S) {
        Optional<String> seen = seen(timeline, frozen, run);
        if (seen.isPresent()) {
          return seen;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<String> seen(Timeline timeline, Frozen frozen, Stretch run) {
    Channel channel = frozen.series().channel();
    Stretch settled = new Stretch(run.from() + timeline.instants(SETTLES_S), run.to());
    Optional<Double> rise = heldRiseK(timeline, settled);
    Map<Channel, Track> beside = WaterMovement.beside(channel, timeline);
    if (rise.isEmpty()
        || beside.values().stream().anyMatch(track -> WaterMovement.stands(track, settled))) {
      return Optional.empty();
    }
    Map<Channel, Track> others = new EnumMap<>(beside);
    // A heater may have a pump of its own beside the filter's; not one that never runs.
    if (channel == Channel.FLOW_TOTAL && frozen.isWholeRun()) {
      others.putAll(WaterMovement.ofHeater(timeline));
    }
    others.values().removeIf(track -> !WaterMovement.moves(track, settled));
    if (others.isEmpty() && channel == Channel.FLOW_TOTAL) {
      return Optional.empty();
    }
    return Optional.of(
        "the heater warmed the water by "
            + Wording.kelvin(rise.get())
            + " for "
            + Wording.duration(settled.durationS(timeline))
            + " meanwhile, which none does without water"
            + saw(others.keySet()));
  }

  private static String saw(Set<Channel> others) {
    return others.isEmpty()
        ? ""
        : ", and "
            + others.stream().limit(NAMED).map(Channel::id).collect(Collectors.joining(" and "))
            + " saw it move";
  }

  /** The rise at the end of a run, if it is that of a heater and was so from early on. */
  private static Optional<Double> heldRiseK(Timeline timeline, Stretch settled) {
    int third = settled.length() / 3;
    double early = riseK(timeline, settled.from(), settled.from() + third);
    double late = riseK(timeline, settled.to() - third, settled.to());
    boolean holds = Math.abs(late - early) < HOLDS_SHARE * early;
    return early > LEAST_RISE_K && early < MOST_RISE_K && holds
        ? Optional.of(late)
        : Optional.empty();
  }

  private static double riseK(Timeline timeline, int from, int to) {
    return Stretch.mean(timeline.of(Channel.WATER_OUT), from, to)
        - Stretch.mean(timeline.of(Channel.WATER_IN), from, to);
  }
}
