package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Locale;

/**
 * Short draws of a motor while the compressor never runs: the control closes the contactor, so heat
 * is called for, but the motor does not turn and its protector opens.
 *
 * @param number how many were read
 * @param most greatest draw read among them, W or A
 */
record StartTries(int number, double most) {
  /** So far from the fan's draw to the running compressor's (ours; a stalled motor draws more). */
  private static final double WAY_TO_RUNNING = 0.5;

  /** A motor that stalls draws more than one that runs: four times its current and more. */
  private static final double STALLED = 1.2;

  /** So many are no chance; ours. */
  static final int SEVERAL = 3;

  private static final StartTries NONE = new StartTries(0, 0);

  /** Tries among the draws of a fan alone. */
  static StartTries besideFan(Stretch fanAlone, Evidence evidence, Channel channel) {
    double fan = middle(evidence.timeline().of(channel), fanAlone);
    double running = running(evidence, channel);
    return running > fan
        ? above(fan + WAY_TO_RUNNING * (running - fan), fanAlone, evidence, channel)
        : NONE;
  }

  /** Tries out of a rest without a fan, where only draws of a stalled motor count. */
  static StartTries atRest(Stretch rest, Evidence evidence, Channel channel) {
    double running = running(evidence, channel);
    return running > 0 ? above(STALLED * running, rest, evidence, channel) : NONE;
  }

  private static StartTries above(
      double least, Stretch stretch, Evidence evidence, Channel channel) {
    double[] draw = evidence.timeline().of(channel);
    int number = 0;
    double most = 0;
    for (int i = stretch.from(); i < stretch.to(); i++) {
      if (draw[i] > least) {
        boolean begins = i == stretch.from() || !(draw[i - 1] > least);
        number += begins ? 1 : 0;
        most = Math.max(most, draw[i]);
      }
    }
    return new StartTries(number, most);
  }

  /** Whether they show that heat is called for. */
  boolean areSeveral() {
    return number >= SEVERAL;
  }

  /** How often and how strongly, in words. */
  String words(Channel channel) {
    return number
        + " tries drew up to "
        + (channel == Channel.POWER
            ? Math.round(most) + " W"
            : String.format(Locale.ROOT, "%.1f A", most));
  }

  /** What it draws while it runs, as seen, else by the nameplate; NaN where neither tells. */
  private static double running(Evidence evidence, Channel channel) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    double[] draw = timeline.of(channel).clone();
    for (int i = 0; i < draw.length; i++) {
      draw[i] = phases.compressorRuns(i) ? draw[i] : Double.NaN;
    }
    double seen = middle(draw, new Stretch(0, draw.length));
    if (!Double.isNaN(seen)) {
      return seen;
    }
    Heater heater = evidence.recording().rig().heater();
    return (channel == Channel.POWER ? heater.greatestRatedW() : heater.currentMaxA())
        .orElse(Double.NaN);
  }

  private static double middle(double[] values, Stretch stretch) {
    double[] known =
        Arrays.stream(values, stretch.from(), stretch.to())
            .filter(value -> !Double.isNaN(value))
            .sorted()
            .toArray();
    return known.length == 0 ? Double.NaN : known[known.length / 2];
  }
}
