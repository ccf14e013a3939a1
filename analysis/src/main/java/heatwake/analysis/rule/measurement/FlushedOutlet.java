package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * An outlet that keeps its value through a stop of the compressor, though water that the heater's
 * own meter sees goes on: it takes the warmth of the heater away within minutes.
 */
final class FlushedOutlet {
  /** Water that moves has flushed heater and clip after so long, s; common practice. */
  private static final double FLUSHED_S = 300;

  /** It stood this far above the entering water, K; ours: twice what unlike clips differ by. */
  private static final double ABOVE_K = 1.5;

  /** And this many of its digits. */
  private static final double DIGITS = 3;

  static final String LIMITS =
      "or water-out stood 1.5 K and three digits above water-in for 5 min after a stop that two others"
          + " followed, in water that flow-heater saw move (ours)";

  private final Timeline timeline;
  private final PhaseGrid phases;

  FlushedOutlet(Timeline timeline, PhaseGrid phases) {
    this.timeline = timeline;
    this.phases = phases;
  }

  /** Which others followed such a stop. */
  Optional<String> followers(Frozen frozen, SleptThrough slept) {
    Channel channel = frozen.series().channel();
    Track meter = WaterMovement.ofHeater(timeline).get(Channel.FLOW_HEATER);
    if (channel != Channel.WATER_OUT || meter == null || !timeline.has(Channel.WATER_IN)) {
      return Optional.empty();
    }
    int apart = timeline.instants(FLUSHED_S);
    return slept.switches(frozen, apart).stream()
        .filter(over -> !phases.compressorRuns(over.at()))
        .filter(over -> WaterMovement.moves(meter, new Stretch(over.at(), over.at() + apart)))
        .filter(over -> standsAbove(frozen, over.at() + apart))
        .flatMap(over -> over.witnesses(channel).stream())
        .findFirst();
  }

  private boolean standsAbove(Frozen frozen, int to) {
    double inK = Stretch.mean(timeline.of(Channel.WATER_IN), to - timeline.instants(60), to);
    return frozen.value() - inK > Math.max(ABOVE_K, DIGITS * frozen.digitK());
  }
}
