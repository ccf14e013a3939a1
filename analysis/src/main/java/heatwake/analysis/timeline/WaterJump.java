package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A probe in the water that jumps away within two readings, stays away for seconds or minutes and
 * jumps back, while the water flows on and the other probe in it stands: a loose wire, a plug
 * moved, a garbled bus. Water cannot do so: what enters warmer leaves warmer, and no heater warms
 * moving water by more than some kelvin.
 *
 * <p>A pump start brings slugs of pipe water that are many kelvin warmer or colder, and standing
 * water in a heater that runs grows hot within seconds. So nothing is said unless the flow is known
 * to be steady about the jump, nor where the other probe moves too.
 *
 * @param channel the probe
 * @param from its first reading that is away, by number in the series
 * @param to the first that is back
 * @param beforeK what it read before
 * @param awayK its reading furthest from that
 * @param partner the other probe
 * @param partnerK by how much that one moved meanwhile
 */
public record WaterJump(
    Channel channel,
    int from,
    int to,
    double beforeK,
    double awayK,
    Channel partner,
    double partnerK) {

  /**
   * Heaters warm their water by 2 to 3 K, and by 6 K at their least flow (common practice); half as
   * much again and a margin, K.
   */
  private static final double JUMP_K = 10;

  /** Back again is within this much of what was read before, K; ours. */
  private static final double BACK_K = 3;

  /** The other probe stands if it moves by less than this, K; ours, a quarter of the jump. */
  private static final double STANDS_K = 2.5;

  /** Longer away is a probe in another place, not a jump, ms; ours. */
  private static final long LONGEST_MS = 1_800_000;

  /**
   * Readings further apart in time than this may well be that different, ms; ours: a compressor
   * that starts on little water warms it by that much within a minute or so.
   */
  private static final long QUICK_MS = 25_000;

  /** The flow must be steady from this long before to this long after, ms; ours. */
  private static final long ABOUT_MS = 120_000;

  /** Greatest less least over greatest of a steady flow or filter pressure; ours. */
  private static final double STEADY_SHARE = 0.2;

  private static final Map<Channel, Channel> PARTNERS =
      new EnumMap<>(
          Map.of(
              Channel.WATER_IN, Channel.WATER_OUT,
              Channel.WATER_OUT, Channel.WATER_IN,
              Channel.WATER_RETURN, Channel.WATER_OUT,
              Channel.WATER_POOL, Channel.WATER_IN));

  private static final List<Channel> METERS =
      List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER);

  /** The jumps of a series, in order of time. */
  public static List<WaterJump> in(Series series, Recording recording) {
    Optional<Series> partner =
        Optional.ofNullable(PARTNERS.get(series.channel())).flatMap(recording::of);
    List<WaterJump> found = new ArrayList<>();
    if (partner.isEmpty()) {
      return found;
    }
    for (int r = 0; r + 2 < series.size(); r++) {
      if (!isFar(series, r, r + 1)) {
        continue;
      }
      int to = back(series, r);
      if (to > 0) {
        Optional<WaterJump> jump = judged(series, r, to, partner.get(), recording);
        if (jump.isPresent()) {
          found.add(jump.get());
          r = to - 1;
        }
      }
    }
    return found;
  }

  private static boolean isFar(Series series, int r, int other) {
    return Math.abs(series.value(other) - series.value(r)) > JUMP_K
        && Math.abs(series.timeMs(other) - series.timeMs(r)) <= QUICK_MS;
  }

  /**
   * The first reading that is back where {@code r} was, if the one or two before it were still
   * away; -1 if there is none.
   */
  private static int back(Series series, int r) {
    for (int k = r + 2; k < series.size(); k++) {
      if (series.timeMs(k) - series.timeMs(r + 1) > LONGEST_MS) {
        return -1;
      }
      double off = Math.abs(series.value(k) - series.value(r));
      if (off <= BACK_K) {
        boolean comesQuickly = isFar(series, k, k - 1) || (k - 2 > r && isFar(series, k, k - 2));
        return comesQuickly ? k : -1;
      }
    }
    return -1;
  }

  private static Optional<WaterJump> judged(
      Series series, int r, int to, Series partner, Recording recording) {
    long fromMs = series.timeMs(r) - ABOUT_MS;
    long toMs = series.timeMs(to) + ABOUT_MS;
    double moves = range(between(partner, fromMs, toMs));
    if (!(moves < STANDS_K) || !flowIsSteady(series.channel(), recording, fromMs, toMs)) {
      return Optional.empty();
    }
    double before = series.value(r);
    double away = series.value(r + 1);
    for (int k = r + 1; k < to; k++) {
      away = Math.abs(series.value(k) - before) > Math.abs(away - before) ? series.value(k) : away;
    }
    return Optional.of(
        new WaterJump(series.channel(), r + 1, to, before, away, partner.channel(), moves));
  }

  /** Whether a meter or a switch tells that the water flowed on; false where nothing tells it. */
  private static boolean flowIsSteady(
      Channel channel, Recording recording, long fromMs, long toMs) {
    for (Channel meter : METERS) {
      Optional<Series> series = recording.of(meter);
      if (series.isPresent()) {
        DoubleSummaryStatistics values = between(series.get(), fromMs, toMs);
        return range(values) <= STEADY_SHARE * Math.max(0, values.getMax());
      }
    }
    boolean isBeforeTheHeater = channel == Channel.WATER_IN || channel == Channel.WATER_POOL;
    return recording
        .of(Channel.FLOW_SWITCH)
        .or(() -> isBeforeTheHeater ? recording.of(Channel.PUMP_ON) : Optional.empty())
        .filter(state -> isOn(state, fromMs, toMs))
        .isPresent();
  }

  private static boolean isOn(Series state, long fromMs, long toMs) {
    int first = state.firstAtOrAfter(fromMs + 1) - 1;
    for (int k = Math.max(0, first); k < state.size() && state.timeMs(k) <= toMs; k++) {
      if (state.value(k) < 0.5) {
        return false;
      }
    }
    return first >= 0;
  }

  /** Greatest less least of some values; NaN if they are fewer than two. */
  private static double range(DoubleSummaryStatistics values) {
    return values.getCount() < 2 ? Double.NaN : values.getMax() - values.getMin();
  }

  private static DoubleSummaryStatistics between(Series series, long fromMs, long toMs) {
    return IntStream.range(series.firstAtOrAfter(fromMs), series.firstAtOrAfter(toMs + 1))
        .mapToDouble(series::value)
        .summaryStatistics();
  }
}
