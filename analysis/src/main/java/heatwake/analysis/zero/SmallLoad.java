package heatwake.analysis.zero;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * Times at which the heater draws something without its compressor, as a crankcase heater that is
 * always on or a fan alone. Neither moves heat to or from the water, so the pair may be zeroed
 * there, if water is known to move and the draw is far from any compressor's.
 */
final class SmallLoad {
  /**
   * Of the running heater's mean draw; ours: an inverter at its slowest takes a fifth with its fan.
   */
  private static final double MOST_OF_RUNNING = 0.2;

  private SmallLoad() {}

  /** The times in spans of a fan alone at which that is so; none where no compressor is seen. */
  static List<PhaseSpan> in(Timeline timeline, List<PhaseSpan> phases) {
    double[] draw = timeline.of(timeline.preferred(Channel.POWER, Channel.CURRENT));
    PhaseGrid grid = PhaseGrid.of(timeline, phases);
    double most = MOST_OF_RUNNING * Stretch.meanWhere(draw, i -> grid.is(i, Phase.STEADY));
    Track moves = WaterMovement.of(timeline);
    return Stretch.where(grid.size(), i -> grid.is(i, Phase.FAN) && moves.yes(i)).stream()
        .filter(one -> one.mean(draw) < most)
        .map(
            one ->
                new PhaseSpan(
                    Phase.FAN, timeline.timeMs(one.from()), timeline.timeMs(one.to() - 1)))
        .toList();
  }
}
