package heatwake.analysis.rule.electrical;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/**
 * What draws like a fan to the end of a run, from the compressor's last stop or where it never ran,
 * with water flowing that is likelier below the set temperature than at it. It is no proof that the
 * compressor failed ({@link NoCompressor} asks for more), but a sound heater at rest runs no fan.
 */
public final class FanToTheEnd {
  /** What a technician can do about it. */
  public static final String NEXT_CHECK =
      "see whether the fan turns while the compressor rests: then heat was called for and the"
          + " compressor did not start; if it does not, something else is on the heater's meter";

  /** No fan runs on, or thaws a coil, for so long; ours, s. */
  private static final double LEAST_S = 3600;

  /** Nor runs on for so long where there is nothing to thaw; ours, as three restart delays, s. */
  private static final double LEAST_WITHOUT_ICE_S = 900;

  private FanToTheEnd() {}

  /** What was seen, in words; empty if nothing was. */
  public static Optional<String> words(Evidence evidence) {
    return FanAlone.in(evidence).flatMap(fan -> words(evidence, fan));
  }

  private static Optional<String> words(Evidence evidence, FanAlone fan) {
    Timeline timeline = evidence.timeline();
    List<Stretch> spells = fan.spells();
    return spells.isEmpty()
        ? Optional.empty()
        : Optional.of(spells.get(spells.size() - 1))
            .filter(fan::isCutOffAfter)
            .filter(spell -> fan.followsARun(spell) || !fan.compressorRan(0, spell.from()))
            .filter(spell -> spell.durationS(timeline) >= leastS(timeline, spell))
            .filter(spell -> !fan.mayThaw(spell))
            .filter(spell -> isTheFan(evidence, FanDraw.of(evidence, fan), spell))
            .flatMap(spell -> words(evidence, spell));
  }

  private static double leastS(Timeline timeline, Stretch spell) {
    Channel air = timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
    return spell.mean(timeline.of(air)) > IcingAir.NO_COIL_ABOVE_K ? LEAST_WITHOUT_ICE_S : LEAST_S;
  }

  /** A crankcase heater is on at rest too, so that no rest draws much less. */
  private static boolean isTheFan(Evidence evidence, FanDraw draw, Stretch spell) {
    return !draw.other().isIn(spell)
        && (!SmallDraw.isIn(evidence, draw.channel(), spell) || draw.quiet().isBeside(spell));
  }

  private static Optional<String> words(Evidence evidence, Stretch spell) {
    HeatCall call = HeatCall.over(evidence, spell.from(), spell.to());
    return call.isLikely()
        ? Optional.of(
            (evidence.cycles().isEmpty()
                    ? "the compressor was not seen running; what draws like the fan stayed on for "
                    : "what draws like the fan stayed on after the compressor stopped, for ")
                + Wording.duration(spell.durationS(evidence.timeline()))
                + " to the end of the run, with the water about "
                + Wording.kelvin(call.belowSetK().orElseThrow())
                + " below the set temperature")
        : Optional.empty();
  }
}
