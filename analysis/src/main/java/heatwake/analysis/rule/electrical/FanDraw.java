package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * What draws like a fan while the compressor rests, and what tells whether it is one.
 *
 * @param channel power, or current where that is not read
 * @param alone when it is drawn
 * @param own what the heater's fan is known to draw
 * @param other what else may draw it
 * @param quiet rests that show it to be no crankcase heater
 */
record FanDraw(Channel channel, FanAlone alone, OwnFan own, OtherLoad other, QuietRest quiet) {
  /** Of a run; empty where neither power nor current is read. */
  static Optional<FanDraw> in(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    FanAlone alone = FanAlone.in(evidence);
    OwnFan own = OwnFan.seenIn(evidence, channel);
    return Optional.of(
        new FanDraw(
            channel,
            alone,
            own,
            new OtherLoad(evidence, channel, alone, own),
            new QuietRest(evidence, channel)));
  }
}
