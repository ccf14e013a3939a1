package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Gaps that take nothing away of what a verdict on the heater rests on: the channel was read for
 * most of the time in which the heater may have run while others went on, or tells of the site and
 * not of the heater. They are told, and weigh nothing. What happened while nothing at all was read
 * nobody knows.
 */
final class IdleGaps {
  /** What is not known for more than this share of the running is not known; ours. */
  private static final double MOST_LOST = 0.5;

  /** No figure of the heater needs them. */
  private static final Set<Channel> OF_THE_SITE =
      EnumSet.of(Channel.WIND_SPEED, Channel.WATER_POOL, Channel.PUMP_ON, Channel.VOLTAGE);

  private IdleGaps() {}

  /** The flags that weigh. */
  static List<Flag> leftOutOf(List<Flag> flags, Evidence evidence) {
    return flags.stream().filter(flag -> !isIdle(flag, evidence)).toList();
  }

  private static boolean isIdle(Flag flag, Evidence evidence) {
    return flag.rule().equals("data-gap")
        && !isOfAll(flag, evidence)
        && flag.channels().stream().noneMatch(channel -> isLost(channel, evidence));
  }

  /** Whether the heater was not watched by any other channel. */
  private static boolean isOfAll(Flag flag, Evidence evidence) {
    return evidence.recording().series().keySet().stream()
        .filter(channel -> !OF_THE_SITE.contains(channel))
        .allMatch(flag.channels()::contains);
  }

  private static boolean isLost(Channel channel, Evidence evidence) {
    if (OF_THE_SITE.contains(channel)) {
      return false;
    }
    double[] values = evidence.timeline().of(channel);
    PhaseGrid phases = evidence.phaseGrid();
    int[] mayRun =
        IntStream.range(0, values.length)
            .filter(i -> phases.compressorRuns(i) || phases.is(i, Phase.UNKNOWN))
            .toArray();
    long lost = IntStream.of(mayRun).filter(i -> Double.isNaN(values[i])).count();
    return lost > MOST_LOST * mayRun.length;
  }
}
