package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/**
 * What draws like a fan from the compressor's last stop to the end of a run, with water flowing
 * that is likelier below the set temperature than at it. It is no proof that the compressor failed
 * ({@link NoCompressor} asks for more), but a sound heater at rest runs no fan.
 */
public final class FanToTheEnd {
  /** What a technician can do about it. */
  public static final String NEXT_CHECK =
      "see whether the fan turns while the compressor rests: then heat was called for and the"
          + " compressor did not start; if it does not, something else is on the heater's meter";

  /** No fan runs on, or thaws a coil, for so long; ours, s. */
  private static final double LEAST_S = 3600;

  /** No thermostat calls at less below the set temperature; common practice: 0.3 to 2 K. */
  private static final double NO_CALL_K = 0.3;

  private FanToTheEnd() {}

  /** What was seen, in words; empty if nothing was. */
  public static Optional<String> words(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Channel channel = timeline.preferred(Channel.POWER, Channel.CURRENT);
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    FanAlone fan = FanAlone.in(evidence);
    OtherLoad other = new OtherLoad(evidence, channel, fan, OwnFan.seenIn(evidence, channel));
    List<Stretch> spells = fan.spells();
    return spells.isEmpty()
        ? Optional.empty()
        : Optional.of(spells.get(spells.size() - 1))
            .filter(fan::isCutOffAfter)
            .filter(fan::followsARun)
            .filter(spell -> spell.durationS(timeline) >= LEAST_S)
            .filter(spell -> !fan.mayThaw(spell))
            .filter(spell -> !SmallDraw.isIn(evidence, channel, spell) && !other.isIn(spell))
            .flatMap(spell -> words(evidence, spell));
  }

  private static Optional<String> words(Evidence evidence, Stretch spell) {
    HeatCall call = HeatCall.over(evidence, spell.from(), spell.to());
    return call.belowSetK().orElse(0) <= NO_CALL_K
        ? Optional.empty()
        : Optional.of(
            "what draws like the fan stayed on for "
                + Wording.duration(spell.durationS(evidence.timeline()))
                + " after the compressor stopped, to the end of the run, with the water about "
                + Wording.kelvin(call.belowSetK().orElseThrow())
                + " below the set temperature");
  }
}
