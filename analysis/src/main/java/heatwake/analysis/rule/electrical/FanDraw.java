package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;

/**
 * What draws like a fan while the compressor rests, and what tells whether it is one.
 *
 * @param channel power, or current where that is not read
 * @param alone when it is drawn
 * @param steps levels of the draw, and steps between them
 * @param own what the heater's fan is known to draw
 * @param other what else may draw it
 * @param quiet rests that show it to be no crankcase heater
 */
record FanDraw(
    Channel channel,
    FanAlone alone,
    LoadSteps steps,
    OwnFan own,
    OtherLoad other,
    QuietRest quiet) {
  /**
   * Of a run with power or current.
   *
   * @param alone when a fan runs alone there
   */
  static FanDraw of(Evidence evidence, FanAlone alone) {
    Timeline timeline = evidence.timeline();
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    LoadSteps steps = new LoadSteps(timeline, channel);
    OwnFan own = OwnFan.seenIn(evidence, channel);
    return new FanDraw(
        channel,
        alone,
        steps,
        own,
        new OtherLoad(evidence, channel, alone, own, steps),
        new QuietRest(evidence, channel));
  }
}
