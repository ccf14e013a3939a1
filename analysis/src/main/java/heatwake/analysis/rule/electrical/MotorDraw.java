package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;

/** The electric draw of a run, by which tries of the compressor are told from a fan and a rest. */
final class MotorDraw {
  /** So far from the fan's draw to the running compressor's (ours; a stalled motor draws more). */
  private static final double WAY_TO_RUNNING = 0.5;

  /** A motor that stalls draws more than one that runs: four times its current and more. */
  private static final double STALLED = 1.2;

  private final Channel channel;
  private final double[] draw;

  /** What the compressor draws while it runs; NaN where nothing tells. */
  private final double running;

  private MotorDraw(Channel channel, double[] draw, double running) {
    this.channel = channel;
    this.draw = draw;
    this.running = running;
  }

  /** By the power, or by the current where that is not read. */
  static MotorDraw in(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    double[] draw = timeline.of(channel);
    return new MotorDraw(channel, draw, running(evidence, channel, draw));
  }

  /** Power or current. */
  Channel channel() {
    return channel;
  }

  /** Tries among the draws of a fan alone. */
  StartTries besideFan(Stretch fanAlone) {
    double fan = fanAlone.middle(draw);
    return running > fan ? above(fan + WAY_TO_RUNNING * (running - fan), fanAlone) : none();
  }

  /** Tries out of a rest without a fan, where only draws of a stalled motor count. */
  StartTries atRest(Stretch rest) {
    return running > 0 ? above(STALLED * running, rest) : none();
  }

  private StartTries none() {
    return new StartTries(0, 0, channel);
  }

  private StartTries above(double least, Stretch stretch) {
    int number = 0;
    double most = 0;
    for (int i = stretch.from(); i < stretch.to(); i++) {
      if (draw[i] > least) {
        boolean begins = i == stretch.from() || !(draw[i - 1] > least);
        number += begins ? 1 : 0;
        most = Math.max(most, draw[i]);
      }
    }
    return new StartTries(number, most, channel);
  }

  /** As seen, else by the nameplate. */
  private static double running(Evidence evidence, Channel channel, double[] draw) {
    PhaseGrid phases = evidence.phaseGrid();
    double[] whileRunning = draw.clone();
    for (int i = 0; i < whileRunning.length; i++) {
      whileRunning[i] = phases.compressorRuns(i) ? whileRunning[i] : Double.NaN;
    }
    double seen = new Stretch(0, whileRunning.length).middle(whileRunning);
    if (!Double.isNaN(seen)) {
      return seen;
    }
    Heater heater = evidence.recording().rig().heater();
    return (channel == Channel.POWER ? heater.greatestRatedW() : heater.currentMaxA())
        .orElse(Double.NaN);
  }
}
