package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Too little water through the heater, however it was found.
 *
 * @param startMs from when, UTC milliseconds
 * @param endMs until when, UTC milliseconds
 * @param flowM3PerS the flow that was read, or the greatest that the rise leaves open
 * @param words what was seen
 * @param channels the readings it rests on
 */
record LowFlow(long startMs, long endMs, double flowM3PerS, String words, Set<Channel> channels) {
  /** What the rise alone rests on. */
  static final Set<Channel> RISE = Set.of(Channel.WATER_IN, Channel.WATER_OUT);

  /** Below this part of the minimum the heater is at risk; ours. */
  private static final double GRAVE_SHARE = 0.5;

  private static final List<String> CAUSES =
      List.of(
          "bypass open too far past the heater",
          "dirty filter or full strainer basket",
          "pump speed set too low",
          "a valve half shut, or air drawn in before the pump");
  private static final String NEXT_CHECK =
      "Open the bypass towards the heater or check the strainer; then see whether the flow rises.";

  /** What the rise cannot tell from little water. */
  private static final String LOOSE_CLIP =
      "a pipe probe that is loose and reads the air or the sun";

  private static final String SIT_TIGHT =
      "See first that both pipe probes sit tight and insulated, since only they tell of the flow. ";

  LowFlow {
    channels = Set.copyOf(channels);
  }

  Flag flag(String rule, LeastFlow least) {
    boolean byRise = channels.equals(RISE);
    return new Flag(
        rule,
        Side.WATER,
        flowM3PerS < GRAVE_SHARE * least.flowM3PerS() ? Severity.ALARM : Severity.WARNING,
        startMs,
        endMs,
        words,
        byRise ? Stream.concat(CAUSES.stream(), Stream.of(LOOSE_CLIP)).toList() : CAUSES,
        byRise ? SIT_TIGHT + NEXT_CHECK : NEXT_CHECK,
        channels);
  }
}
