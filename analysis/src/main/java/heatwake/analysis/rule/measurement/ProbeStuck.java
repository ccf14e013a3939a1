package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** A reading freezes while its neighbours move. */
public final class ProbeStuck implements Rule {
  @Override
  public String id() {
    return "probe-stuck";
  }

  @Override
  public String summary() {
    return "A reading freezes while its neighbours move.";
  }

  @Override
  public String needs() {
    return "the channel in question and at least one other that moves meanwhile";
  }

  @Override
  public String limits() {
    return "One value to the last digit for at least 15 min and 20 readings, while at least one other"
        + " probe moves, and one of these holds; the channel jitters by more than a digit at every other time in the"
        + " same state (70 % of its readings change, by 1.4 digits on the average, and at its share of"
        + " equal readings when it is stillest so many in a row have a chance under one in a million;"
        + " 30 % of its readings are enough where it held five levels, together two digits apart, and"
        + " jittered at each);"
        + " or the other of water-in and water-pool went on by more than 0.5 K and three"
        + " digits while water moved; or the other of water-in and water-out did so, and by a quarter of"
        + " the rise, while the heater heated on with power, pressures and flow within 12 % (ten"
        + " digits where no flow is measured); or air-in stood for an hour while air-ambient went on by"
        + " 1 K and ten digits of air-in; or a flow reads on while two others of the same water"
        + " saw it move and then say for 3 min that it stands; or a flow reads nothing while the"
        + " compressor runs for 15 min with a rise of 1 to 12 K that holds within 30 % and no other"
        + " probe of that water says that it stands (a heater without water trips within minutes:"
        + " common practice; flow-total needs another that says it moves); or the compressor started"
        + " or stopped meanwhile and two others that must follow did (ours; the leaving water must"
        + " follow only while it moves; no others where the high side is read and changed by less than"
        + " 10 %, unless the suction side moved by 30 % absolute and the leaving air by 2 K; the high side itself only where the rise followed by 0.7 K or the suction side moved"
        + " by 30 % absolute; or water-out stood through one that water-in does not show by 0.4 K"
        + " either, and water-in went on by 0.5 K and ten digits while water moved: a compressor without compression does neither); "
        + FlushedOutlet.LIMITS
        + "; "
        + FarLonger.LIMITS
        + ". A slow or coarse reading"
        + " that may honestly stand still is left alone, so"
        + " against another thermometer only the longest standstill counts.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Frozen> frozen = new ArrayList<>();
    for (Series series : evidence.recording().series().values()) {
      if (series.channel().quantity() != Quantity.STATE) {
        frozen.addAll(Frozen.all(series));
      }
    }
    if (frozen.isEmpty()) {
      return Outcome.clear();
    }
    WhyStuck why = new WhyStuck(evidence, frozen);
    return Outcome.of(
        frozen.stream().flatMap(one -> why.of(one).map(text -> flag(one, text)).stream()).toList());
  }

  private Flag flag(Frozen frozen, String reason) {
    Channel channel = frozen.series().channel();
    return new Flag(
        id(),
        Side.MEASUREMENT,
        Severity.WARNING,
        frozen.fromMs(),
        frozen.toMs(),
        String.format(
            Locale.ROOT,
            "%s stood at %s for %s (%d readings); %s",
            channel.id(),
            Wording.reading(channel, frozen.value()),
            Wording.duration(frozen.lengthS()),
            frozen.readings(),
            reason),
        List.of(
            "probe or its electronics hung up and repeats the last value",
            "gateway sends an old value on",
            "sensor taken out of the place it should measure"),
        nextCheck(channel),
        Set.of(channel));
  }

  private static String nextCheck(Channel channel) {
    return switch (channel.quantity()) {
      case FLOW ->
          "Look at the flow meter of "
              + channel.id()
              + ", its wheel and its plug; restart it, and see whether it follows the pump.";
      case TEMPERATURE ->
          "Warm the " + channel.id() + " probe by hand, or restart it, and see whether it follows.";
      default ->
          "Restart what reads "
              + channel.id()
              + ", and see whether it follows when the heater starts or stops.";
    };
  }
}
