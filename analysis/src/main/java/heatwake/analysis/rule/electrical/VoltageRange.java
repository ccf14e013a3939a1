package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/** Supply outside nominal by more than 10 %. */
public final class VoltageRange implements Rule {
  /** Deviation from nominal; contract of the rule (most makers state the same; common practice). */
  public static final double TOLERANCE = 0.1;

  /** Beyond this share of nominal it is no supply at all, or another nominal voltage; ours. */
  private static final double NO_SUPPLY = 0.6;

  private static final double OTHER_NOMINAL = 1.5;

  /** For at least this long, s; ours: a motor's start is over in a second. */
  private static final double SUSTAINED_S = 60;

  @Override
  public String id() {
    return "voltage-range";
  }

  @Override
  public String summary() {
    return "The supply is outside nominal by more than 10 %.";
  }

  @Override
  public String needs() {
    return "voltage and heater.voltage";
  }

  @Override
  public String limits() {
    return "Below 90 % or above 110 % of heater.voltage by more than 3 standard uncertainties of the"
        + " reading, for 60 s or three readings (ours). Under 60 % the heater is taken as switched"
        + " off.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    OptionalDouble nominal = evidence.recording().rig().heater().voltageV();
    if (!timeline.has(Channel.VOLTAGE)) {
      return Outcome.notEnoughData("no voltage reading");
    }
    if (nominal.isEmpty()) {
      return Outcome.notEnoughData("no heater.voltage in the rig");
    }
    double nominalV = nominal.getAsDouble();
    double doubtV =
        Doubt.FACTOR
            * ProbeUncertainty.of(evidence.recording().rig(), Channel.VOLTAGE).at(nominalV);
    double[] voltage = timeline.of(Channel.VOLTAGE);
    List<Stretch> low =
        sustained(timeline, voltage, NO_SUPPLY * nominalV, (1 - TOLERANCE) * nominalV - doubtV);
    List<Stretch> high =
        sustained(timeline, voltage, (1 + TOLERANCE) * nominalV + doubtV, OTHER_NOMINAL * nominalV);
    if (!low.isEmpty()) {
      return Outcome.flagged(flag(timeline, voltage, low, nominalV, Direction.LOW));
    }
    return high.isEmpty()
        ? Outcome.clear()
        : Outcome.flagged(flag(timeline, voltage, high, nominalV, Direction.HIGH));
  }

  private enum Direction {
    LOW,
    HIGH
  }

  private static List<Stretch> sustained(
      Timeline timeline, double[] voltage, double above, double below) {
    double leastS = Math.max(SUSTAINED_S, 3 * timeline.intervalMs(Channel.VOLTAGE) / 1e3);
    return Stretch.where(voltage.length, i -> voltage[i] > above && voltage[i] < below).stream()
        .filter(stretch -> stretch.durationS(timeline) >= leastS)
        .toList();
  }

  private Flag flag(
      Timeline timeline,
      double[] voltage,
      List<Stretch> beyond,
      double nominalV,
      Direction direction) {
    double seconds = beyond.stream().mapToDouble(one -> one.durationS(timeline)).sum();
    double mean =
        beyond.stream().mapToDouble(one -> one.mean(voltage) * one.length()).sum()
            / beyond.stream().mapToInt(Stretch::length).sum();
    boolean isLow = direction == Direction.LOW;
    return new Flag(
        id(),
        Side.ELECTRICAL,
        Severity.WARNING,
        timeline.timeMs(beyond.get(0).from()),
        timeline.timeMs(beyond.get(beyond.size() - 1).to() - 1),
        String.format(
            Locale.ROOT,
            "Supply at %.0f V for %s, %.0f %% %s nominal %.0f V; 10 %% are allowed",
            mean,
            Wording.duration(seconds),
            Math.abs(mean / nominalV - 1) * 100,
            isLow ? "below" : "above",
            nominalV),
        isLow
            ? List.of(
                "supply conductor too thin or too long, or a loose terminal",
                "low voltage from the utility",
                "heater connected to another nominal voltage than the rig states")
            : List.of(
                "high voltage from the utility, or feed-in nearby",
                "heater connected to another nominal voltage than the rig states"),
        "Have a licensed electrician measure the voltage at the heater and at the board, at rest and"
            + " while it runs.",
        Set.of(Channel.VOLTAGE));
  }
}
