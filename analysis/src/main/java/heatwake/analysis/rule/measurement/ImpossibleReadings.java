package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.BeyondCritical;
import heatwake.analysis.timeline.Screening;
import java.util.BitSet;
import java.util.Locale;
import java.util.Optional;

/** Values that the channel, or the refrigerant in the rig, does not reach. */
final class ImpossibleReadings {
  /** So few readings just beyond what is possible are noise, by number and share of value; ours. */
  private static final int FEW = 3;

  private static final double NEAR_SHARE = 0.3;

  /** Up to this share of its readings a fault is a passing one; ours. */
  private static final double PASSING_SHARE = 0.001;

  private ImpossibleReadings() {}

  static Optional<FaultyReadings> in(Series series, Heater heater) {
    return impossible(series).or(() -> beyondCritical(series, heater));
  }

  private static Optional<FaultyReadings> impossible(Series series) {
    Channel channel = series.channel();
    Unit unit = channel.storedUnit();
    BitSet impossible = Screening.impossible(series);
    int count = impossible.cardinality();
    int first = impossible.nextSetBit(0);
    if (count == 0 || (count < FEW && isNear(channel, unit.fromSi(series.value(first))))) {
      return Optional.empty();
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s read %s (%d of %d readings); possible is %s",
            channel.id(),
            Wording.reading(channel, series.value(first)),
            count,
            series.size(),
            Wording.everyday(channel.possibleRange()).replace('-', '−'));
    return Optional.of(faulty(series, impossible, text));
  }

  /** Pressures that the refrigerant in the rig does not reach. */
  private static Optional<FaultyReadings> beyondCritical(Series series, Heater heater) {
    BitSet beyond = BeyondCritical.in(series, heater);
    int count = beyond.cardinality();
    if (count < FEW) {
      return Optional.empty();
    }
    int first = beyond.nextSetBit(0);
    String text =
        String.format(
            Locale.ROOT,
            "%s read %s (%d of %d readings); %s does not reach %s in any heater",
            series.channel().id(),
            Wording.reading(series.channel(), series.value(first)),
            count,
            series.size(),
            heater.refrigerant().orElseThrow().designation(),
            Wording.reading(series.channel(), BeyondCritical.mostPa(heater).orElseThrow()));
    return Optional.of(faulty(series, beyond, text));
  }

  private static FaultyReadings faulty(Series series, BitSet readings, String text) {
    return new FaultyReadings(
        series.channel(),
        readings.cardinality() <= PASSING_SHARE * series.size() ? Severity.INFO : Severity.WARNING,
        series.timeMs(readings.nextSetBit(0)),
        series.timeMs(readings.length() - 1),
        text);
  }

  /** Whether a value is only just impossible, as noise may make it. */
  private static boolean isNear(Channel channel, double stored) {
    double near = Math.abs(stored) * NEAR_SHARE;
    return channel.isPossible(stored - near) || channel.isPossible(stored + near);
  }
}
