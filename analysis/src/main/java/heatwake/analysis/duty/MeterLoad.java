package heatwake.analysis.duty;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A load on the heater's meter that is not the heater's, mostly the pool pump: it draws while the
 * water moves and compressor and fan rest. It is part of what was metered, but not of what the
 * nameplate speaks of.
 *
 * @param watts its mean power, W; empty where there is none or power is not measured
 * @param amperes its mean current, A; empty where there is none or current is not measured. The
 *     heater's own is at least what the clamp reads less this, since phasors add up to no more.
 * @param shownBy channels by which such a load would have shown: the heater was seen at rest while
 *     water moved, or may have moved. One that runs with the heater always, as a pump does, shows
 *     nowhere else.
 */
public record MeterLoad(OptionalDouble watts, OptionalDouble amperes, Set<Channel> shownBy) {
  /** Controls and crankcase heaters take up to 80 W, the latter only at rest: common practice. */
  private static final double LEAST_W = 150;

  /** The same on a clamp: 150 W at 230 V and a power factor of 0.8. */
  private static final double LEAST_A = 0.8;

  /** And a load matters from this share of the running heater's draw on; ours. */
  private static final double LEAST_SHARE = 0.1;

  /** It is seen for so long; ours. */
  private static final double SEEN_S = 120;

  /** A rest before a start is seen over so long; ours. */
  private static final double REST_S = 20;

  /** Looks for it over a whole run. */
  public static MeterLoad of(Timeline timeline, PhaseGrid grid) {
    return new MeterLoad(
        draw(Channel.POWER, LEAST_W, timeline, grid),
        draw(Channel.CURRENT, LEAST_A, timeline, grid),
        Stream.of(Channel.POWER, Channel.CURRENT)
            .filter(channel -> wouldShow(channel, timeline, grid))
            .collect(Collectors.toUnmodifiableSet()));
  }

  private static boolean wouldShow(Channel channel, Timeline timeline, PhaseGrid grid) {
    double[] draw = timeline.of(channel);
    int seen =
        Stretch.where(
                draw.length,
                i -> !Double.isNaN(draw[i]) && !grid.compressorRuns(i) && !grid.is(i, Phase.OFF))
            .stream()
            .mapToInt(Stretch::length)
            .max()
            .orElse(0);
    return seen >= timeline.instants(REST_S);
  }

  private static OptionalDouble draw(
      Channel channel, double least, Timeline timeline, PhaseGrid grid) {
    if (!timeline.has(channel)) {
      return OptionalDouble.empty();
    }
    double[] draw = timeline.of(channel);
    double resting = mean(draw, i -> grid.is(i, Phase.CIRCULATING), timeline.instants(SEEN_S));
    double steady = mean(draw, i -> grid.is(i, Phase.STEADY), 1);
    // A heater that never runs for long has its load beside it all the same.
    double running = Double.isNaN(steady) ? mean(draw, grid::compressorRuns, 1) : steady;
    boolean matters = resting >= least && resting >= LEAST_SHARE * running && resting < running;
    return matters ? OptionalDouble.of(resting) : OptionalDouble.empty();
  }

  /** What it does to the figures of the run, in a sentence; empty where there is no such load. */
  public List<String> missing() {
    return watts.isEmpty()
        ? List.of()
        : List.of(
            String.format(
                Locale.ROOT,
                "COP of the heater alone: power stands at %.0f W with the heater at rest and water"
                    + " moving, so another load, such as the pool pump, is on its meter; energy and"
                    + " COP count it, what is held against the nameplate does not",
                watts.getAsDouble()));
  }

  /** NaN where it is seen at fewer instants. */
  private static double mean(double[] draw, IntPredicate where, int least) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < draw.length; i++) {
      if (where.test(i) && !Double.isNaN(draw[i])) {
        sum += draw[i];
        count++;
      }
    }
    return count < least ? Double.NaN : sum / count;
  }
}
