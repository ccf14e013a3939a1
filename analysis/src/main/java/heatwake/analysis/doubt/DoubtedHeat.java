package heatwake.analysis.doubt;

import heatwake.analysis.doubt.DoubtedReadings.Stretch;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.zero.Pair;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Says which probe takes heat and COP away, when, and what to do. A heat of a probe that lies in
 * the air would be false together with its uncertainty.
 */
public final class DoubtedHeat {
  private static final Set<Channel> ELECTRIC =
      EnumSet.of(Channel.POWER, Channel.ENERGY, Channel.CURRENT, Channel.VOLTAGE);

  private DoubtedHeat() {}

  /**
   * What the doubted readings take away, one sentence for each.
   *
   * @param flags the flags of the run
   * @param water the water's side as computed with the doubted readings
   * @param without the same without them: a flow may then be had another way
   */
  public static List<String> missing(
      DoubtedReadings doubted, List<Flag> flags, WaterSide water, WaterSide without) {
    Set<Channel> ofHeat = channelsOf(water);
    List<String> sentences = new ArrayList<>();
    for (Stretch stretch : doubted.stretches()) {
      sentences.add(
          sentence(stretch, what(stretch.channel(), ofHeat), isReplaced(stretch, without)));
    }
    for (Flag flag : flags) {
      // A fault without a channel is of a probe that nothing is computed from.
      if (flag.rule().equals("probe-fault") && flag.severity() != Severity.INFO) {
        flag.channels().stream()
            .filter(ofHeat::contains)
            .map(channel -> fault(channel, flag))
            .forEach(sentences::add);
      }
    }
    return sentences;
  }

  private static Set<Channel> channelsOf(WaterSide water) {
    Set<Channel> channels = EnumSet.of(Channel.WATER_IN);
    channels.add(water.flow().map(FlowBasis::hot).orElse(Channel.WATER_OUT));
    water.pair().map(Pair::hot).ifPresent(channels::add);
    water.flow().flatMap(FlowBasis::meter).ifPresent(channels::add);
    return channels;
  }

  private static String what(Channel channel, Set<Channel> ofHeat) {
    if (ofHeat.contains(channel)) {
      return "heat and COP";
    }
    return ELECTRIC.contains(channel)
        ? "electric energy and COP"
        : "figures that rest on " + channel.id();
  }

  private static boolean isReplaced(Stretch stretch, WaterSide without) {
    return stretch.channel().quantity() == Quantity.FLOW
        && without
            .flow()
            .filter(basis -> !basis.meter().equals(Optional.of(stretch.channel())))
            .isPresent();
  }

  private static String sentence(Stretch stretch, String what, boolean isReplaced) {
    String seen =
        stretch.rule().equals("probe-slipped")
            ? " was off its pipe from %s to %s, so that time is left out; see that the clip sits tight"
            : isReplaced
                ? " stood still from %s to %s, so it takes no part and the flow is found another"
                    + " way; mend or change the probe and record again"
                : " stood still from %s to %s, so that time is left out; mend or change the probe"
                    + " and record again";
    return what
        + ": "
        + stretch.channel().id()
        + String.format(
            Locale.ROOT, seen, Wording.moment(stretch.fromMs()), Wording.moment(stretch.toMs()));
  }

  private static String fault(Channel channel, Flag flag) {
    return "heat and COP: "
        + channel.id()
        + " read what cannot be between "
        + Wording.moment(flag.startMs())
        + " and "
        + Wording.moment(flag.endMs())
        + ", so those readings are left out; mend plug and cable and record again";
  }
}
