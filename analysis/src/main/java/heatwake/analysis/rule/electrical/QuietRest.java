package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * Rests with the supply on in which far less is drawn than later stands. A crankcase heater, which
 * may draw as little as a small fan, warms the resting compressor in each of them, unless a
 * thermostat keeps it off in warm air; so what comes on later, in air as warm, is none.
 */
final class QuietRest {
  /** A rest is held so long (ours, as a restart delay at the least), s. */
  private static final double LEAST_S = 180;

  /** And draws less than this share of what stands later; ours. */
  private static final double SHARE = 0.5;

  /** Less than this may be no supply at all, as before a breaker is closed; ours. */
  private static final double POWERED_W = 2;

  private static final double POWERED_A = 0.02;

  /** A thermostat acts at once; the air is that of so long from where the draw came on; ours, s. */
  private static final double COMES_ON_S = 1800;

  /**
   * In air this warm no thermostat switches a crankcase heater; common practice: they close
   * somewhere below 10 to 18 Cel.
   */
  private static final double WARM_AIR_K = 273.15 + 18;

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final double[] draw;
  private final double powered;
  private final double[] air;

  QuietRest(Evidence evidence, Channel channel) {
    this.timeline = evidence.timeline();
    this.phases = evidence.phaseGrid();
    this.draw = timeline.of(channel);
    this.powered = channel == Channel.POWER ? POWERED_W : POWERED_A;
    this.air = timeline.of(timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT));
  }

  /** Whether a stretch of some draw has such a rest before it, and comes on in warm air. */
  boolean isBefore(Stretch later) {
    double most = SHARE * later.middle(draw);
    int comesOn = Math.min(later.length(), timeline.instants(COMES_ON_S));
    return new Stretch(later.from(), later.from() + comesOn).mean(air) > WARM_AIR_K
        && rests(later.from()).stream()
            .mapToDouble(rest -> rest.middle(draw))
            .anyMatch(drawn -> drawn >= powered && drawn < most);
  }

  /** Whether there is such a rest at all, whatever the air, and with the supply on or off. */
  boolean isBeside(Stretch drawn) {
    double most = SHARE * drawn.middle(draw);
    return rests(phases.size()).stream().anyMatch(rest -> rest.middle(draw) < most);
  }

  private List<Stretch> rests(int before) {
    return Stretch.where(before, i -> phases.is(i, Phase.CIRCULATING)).stream()
        .filter(rest -> rest.durationS(timeline) >= LEAST_S)
        .toList();
  }
}
