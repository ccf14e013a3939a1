package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/** What is told of a current that is too high. */
final class OvercurrentFlag {
  private final String rule;
  private final Timeline timeline;

  OvercurrentFlag(String rule, Timeline timeline) {
    this.rule = rule;
    this.timeline = timeline;
  }

  /**
   * More than the nameplate allows.
   *
   * @param current the heater's, A
   * @param besideA what another load takes beside it, A
   * @param over when it was
   * @param limitA by the nameplate, A
   */
  Flag overNameplate(double[] current, OptionalDouble besideA, List<Stretch> over, double limitA) {
    double overS = over.stream().mapToDouble(one -> one.durationS(timeline)).sum();
    double meanA =
        over.stream().mapToDouble(one -> one.mean(current) * one.length()).sum()
            / over.stream().mapToInt(Stretch::length).sum();
    return flag(
        Severity.ALARM,
        over,
        String.format(
            Locale.ROOT,
            "%.1f A for %s%s; the nameplate allows %.1f A",
            meanA,
            Wording.duration(overS),
            besideA.isEmpty()
                ? ""
                : String.format(
                    Locale.ROOT,
                    ", without the %.1f A that another load takes with the heater at rest",
                    besideA.getAsDouble()),
            limitA),
        List.of(
            "supply voltage too low",
            "high pressure: too little water or a scaled condenser, too warm water",
            "compressor or fan motor failing",
            "another load on the measured conductor"));
  }

  /**
   * A load without a break that is too much for the breaker.
   *
   * @param highestA its highest mean, A
   * @param meanOverS over so long, s
   * @param over when it was
   */
  Flag overBreaker(double highestA, double meanOverS, List<Stretch> over, double breakerA) {
    return flag(
        Severity.WARNING,
        over,
        String.format(
            Locale.ROOT,
            "%.1f A over %s without a break; 80 %% of the %.0f A breaker is %.1f A",
            highestA,
            Wording.duration(meanOverS),
            breakerA,
            Overcurrent.CONTINUOUS_SHARE * breakerA),
        List.of(
            "breaker too small for the heater as a continuous load",
            "heater draws more than it should",
            "another load on the measured conductor"));
  }

  private Flag flag(Severity severity, List<Stretch> over, String text, List<String> causes) {
    return new Flag(
        rule,
        Side.ELECTRICAL,
        severity,
        timeline.timeMs(over.get(0).from()),
        timeline.timeMs(over.get(over.size() - 1).to() - 1),
        text,
        causes,
        "Have a licensed electrician compare current, supply voltage, conductor and breaker with the"
            + " nameplate and the local code.",
        Set.of(Channel.CURRENT));
  }

  /** Without a look at the heater at rest the current may be that of another load in part. */
  static Flag maybeOfAnother(Flag flag) {
    return new Flag(
        flag.rule(),
        Side.UNDECIDED,
        Severity.WARNING,
        flag.startMs(),
        flag.endMs(),
        flag.evidence()
            + "; the heater was not seen at rest, so another load on the conductor, such as the"
            + " pool pump, is not ruled out",
        flag.causes(),
        "Stop the heater with the pool pump running and read the current: what stands then is"
            + " another load's.",
        flag.channels());
  }
}
