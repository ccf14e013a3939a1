package heatwake.analysis.rule.control;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;

/**
 * Short rests in which a heater may turn its valve for a defrost, where nothing would show that
 * defrost for certain: the water is not read on both sides meanwhile, and the air is not known to
 * be too warm for ice. Pressures alone show a defrost only where the lift collapses.
 */
final class ValveRests {
  /** The longest that a compressor rests to turn the valve; common practice: half to two min, s. */
  private static final double LONGEST_S = 180;

  /** A defrost has two such rests, and the next comes after this; common practice: 30 to 90 min. */
  private static final long LEAST_BETWEEN_MS = 1_800_000;

  private static final int OF_ONE_DEFROST = 2;

  private ValveRests() {}

  /** The rests that cannot be of a defrost that nothing shows. */
  static List<ShortRest> leftOut(List<ShortRest> rests, Timeline timeline) {
    return rests.stream().filter(rest -> !mayTurnTheValve(rest, rests, timeline)).toList();
  }

  /** Whether the water is read on both sides most of the time around a rest. */
  private static boolean defrostShows(ShortRest rest, Timeline timeline) {
    double[] in = timeline.of(Channel.WATER_IN);
    double[] out = timeline.of(Channel.WATER_OUT);
    int from = timeline.firstAtOrAfter(rest.stopMs() - ShortRest.BESIDE_DEFROST_MS);
    int to =
        Math.min(
            timeline.size(), timeline.firstAtOrAfter(rest.startMs() + ShortRest.BESIDE_DEFROST_MS));
    int read = 0;
    for (int i = from; i < to; i++) {
      read += Double.isNaN(in[i] + out[i]) ? 0 : 1;
    }
    return 2 * read > to - from;
  }

  private static boolean mayTurnTheValve(ShortRest rest, List<ShortRest> rests, Timeline timeline) {
    return rest.lengthS() <= LONGEST_S
        && !defrostShows(rest, timeline)
        && !isWarm(rest, timeline)
        && !isOneOfMany(rests.indexOf(rest), rests);
  }

  private static boolean isWarm(ShortRest rest, Timeline timeline) {
    Channel air = timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
    double[] values = timeline.of(air);
    return Arrays.stream(
            values,
            timeline.firstAtOrAfter(rest.stopMs()),
            Math.min(values.length, timeline.firstAtOrAfter(rest.startMs()) + 1))
        .allMatch(kelvin -> kelvin > IcingAir.NO_SOUND_COIL_ABOVE_K);
  }

  /** Whether it is one of more rests than a defrost has, closer together than defrosts come. */
  private static boolean isOneOfMany(int index, List<ShortRest> rests) {
    for (int first = Math.max(0, index - OF_ONE_DEFROST);
        first <= index && first + OF_ONE_DEFROST < rests.size();
        first++) {
      long lasted = rests.get(first + OF_ONE_DEFROST).startMs() - rests.get(first).stopMs();
      if (lasted <= LEAST_BETWEEN_MS) {
        return true;
      }
    }
    return false;
  }
}
