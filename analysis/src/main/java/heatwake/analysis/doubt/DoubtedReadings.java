package heatwake.analysis.doubt;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Readings that a measurement flag has found not to be of what their channel says: of a probe that
 * slipped off its pipe or that stood still. No figure may rest on them. Impossible values are no
 * part of it: they are screened out before anything is computed. Nor are exchanged probes, which
 * read the water rightly: {@link heatwake.analysis.heat.WaterSide} gives no heat of them.
 *
 * @param stretches channels and times, in the order of the flags
 */
public record DoubtedReadings(List<Stretch> stretches) {
  private static final Set<String> DISCREDITING = Set.of("probe-slipped", "probe-stuck");

  /**
   * A channel that was wrong for more than this share of a run counts as not measured, so that
   * another way to the same figure is taken; ours.
   */
  private static final double NOTHING_LEFT = 0.95;

  /**
   * Readings of one channel.
   *
   * @param rule the flag that accuses them
   * @param channel their channel
   * @param fromMs the last moment at which they could still be believed, UTC milliseconds
   * @param toMs from when they can be believed again
   */
  public record Stretch(String rule, Channel channel, long fromMs, long toMs) {}

  public DoubtedReadings {
    stretches = List.copyOf(stretches);
  }

  /** What the flags of a run accuse. */
  public static DoubtedReadings of(List<Flag> flags) {
    List<Stretch> stretches = new ArrayList<>();
    for (Flag flag : flags) {
      if (DISCREDITING.contains(flag.rule())) {
        flag.channels().stream()
            .sorted()
            .map(channel -> stretch(flag, channel))
            .forEach(stretches::add);
      }
    }
    return new DoubtedReadings(stretches);
  }

  private static Stretch stretch(Flag flag, Channel channel) {
    return new Stretch(flag.rule(), channel, flag.startMs(), flag.endMs() + 1);
  }

  public boolean isEmpty() {
    return stretches.isEmpty();
  }

  /** The recording as if these readings had not been read. */
  public Recording leftOutOf(Recording recording) {
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    series.putAll(recording.series());
    for (Stretch stretch : stretches) {
      series.computeIfPresent(stretch.channel(), (channel, one) -> leftOut(one, stretch));
    }
    return recording.with(series);
  }

  private static Series leftOut(Series series, Stretch stretch) {
    BitSet accused = new BitSet();
    accused.set(series.firstAtOrAfter(stretch.fromMs() + 1), series.firstAtOrAfter(stretch.toMs()));
    if (accused.cardinality() > NOTHING_LEFT * series.size()) {
      accused.set(0, series.size());
    }
    return series.without(accused);
  }
}
