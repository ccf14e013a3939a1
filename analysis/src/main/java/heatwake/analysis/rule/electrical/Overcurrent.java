package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Current above the nameplate, or a continuous load above 80 % of the breaker. */
public final class Overcurrent implements Rule {
  /** Mean over this time is compared with the nameplate: an inrush is over in seconds, s; ours. */
  private static final double SUSTAINED_S = 300;

  /** A load on for this long is continuous, s; NEC article 100 (from memory). */
  private static final double CONTINUOUS_S = 3 * 3600;

  /** Share of the breaker that a continuous load may take; NEC 210.20(A): 125 % of the load. */
  private static final double CONTINUOUS_SHARE = 0.8;

  /**
   * Most of that time the current itself must lie above the limit, so that a slow probe that
   * happens on one inrush does not count it for minutes; ours.
   */
  private static final double SUSTAINED_SHARE = 0.8;

  /** A load is on while it draws this share of its highest sustained mean; ours. */
  private static final double ON_SHARE = 0.2;

  @Override
  public String id() {
    return "overcurrent";
  }

  @Override
  public String summary() {
    return "Current above the nameplate, or a continuous load above 80 % of the breaker.";
  }

  @Override
  public String needs() {
    return "current, with heater.current-max or heater.breaker";
  }

  @Override
  public String limits() {
    return "Mean over 5 min, and 80 % of the instants in it, above heater.current-max, or mean over 3 h of unbroken load above 80 % of"
        + " heater.breaker (NEC 210.20(A) as an example; local code decides), each by more than 3"
        + " standard uncertainties of the reading.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Heater heater = evidence.recording().rig().heater();
    if (!timeline.has(Channel.CURRENT)) {
      return Outcome.notEnoughData("no current reading");
    }
    if (heater.currentMaxA().isEmpty() && heater.breakerA().isEmpty()) {
      return Outcome.notEnoughData("no heater.current-max and no heater.breaker in the rig");
    }
    ProbeUncertainty probe = ProbeUncertainty.of(evidence.recording().rig(), Channel.CURRENT);
    double[] current = timeline.of(Channel.CURRENT);
    List<Flag> flags = new ArrayList<>();
    if (heater.currentMaxA().isPresent()) {
      double limit = heater.currentMaxA().getAsDouble();
      Load.highest(timeline, current, SUSTAINED_S, 0, limit)
          .filter(load -> Doubt.above(load.estimate(probe), limit))
          .ifPresent(load -> flags.add(overNameplate(load, limit)));
    }
    if (heater.breakerA().isPresent() && flags.isEmpty()) {
      double limit = CONTINUOUS_SHARE * heater.breakerA().getAsDouble();
      double on =
          Load.highest(timeline, current, SUSTAINED_S, 0, 0)
              .map(load -> ON_SHARE * load.meanA())
              .orElse(0.0);
      Load.highest(timeline, current, CONTINUOUS_S, on, 0)
          .filter(load -> Doubt.above(load.estimate(probe), limit))
          .ifPresent(load -> flags.add(overBreaker(load, heater.breakerA().getAsDouble())));
    }
    return Outcome.of(flags);
  }

  /** The highest mean current over a time. */
  private record Load(double meanA, long startMs, long endMs) {

    Estimate estimate(ProbeUncertainty probe) {
      return new Estimate(meanA, probe.at(meanA));
    }

    /**
     * Over all windows of a length in which no reading is missing or under {@code leastA} and most
     * are not under {@code mostlyA}.
     */
    static Optional<Load> highest(
        Timeline timeline, double[] current, double lengthS, double leastA, double mostlyA) {
      int window = (int) Math.max(1, Math.round(lengthS / timeline.stepS()));
      double sum = 0;
      int inARow = 0;
      int high = 0;
      double best = Double.NEGATIVE_INFINITY;
      int bestEnd = -1;
      for (int i = 0; i < current.length; i++) {
        if (Double.isNaN(current[i]) || current[i] < leastA) {
          inARow = 0;
          sum = 0;
          high = 0;
          continue;
        }
        sum += current[i];
        high += current[i] >= mostlyA ? 1 : 0;
        inARow++;
        if (inARow > window) {
          sum -= current[i - window];
          high -= current[i - window] >= mostlyA ? 1 : 0;
        }
        if (inARow >= window && high >= SUSTAINED_SHARE * window && sum / window > best) {
          best = sum / window;
          bestEnd = i;
        }
      }
      return bestEnd < 0
          ? Optional.empty()
          : Optional.of(
              new Load(best, timeline.timeMs(bestEnd - window + 1), timeline.timeMs(bestEnd)));
    }
  }

  private Flag overNameplate(Load load, double limitA) {
    return flag(
        Severity.ALARM,
        load,
        String.format(
            Locale.ROOT,
            "%.1f A over %s; the nameplate allows %.1f A",
            load.meanA(),
            Wording.duration(SUSTAINED_S),
            limitA),
        List.of(
            "supply voltage too low",
            "high pressure: too little water or a scaled condenser, too warm water",
            "compressor or fan motor failing",
            "another load on the measured conductor"));
  }

  private Flag overBreaker(Load load, double breakerA) {
    return flag(
        Severity.WARNING,
        load,
        String.format(
            Locale.ROOT,
            "%.1f A over %s without a break; 80 %% of the %.0f A breaker is %.1f A",
            load.meanA(),
            Wording.duration(CONTINUOUS_S),
            breakerA,
            CONTINUOUS_SHARE * breakerA),
        List.of(
            "breaker too small for the heater as a continuous load",
            "heater draws more than it should",
            "another load on the measured conductor"));
  }

  private Flag flag(Severity severity, Load load, String text, List<String> causes) {
    return new Flag(
        id(),
        Side.ELECTRICAL,
        severity,
        load.startMs(),
        load.endMs(),
        text,
        causes,
        "Have a licensed electrician compare current, supply voltage, conductor and breaker with the"
            + " nameplate and the local code.",
        Set.of(Channel.CURRENT));
  }
}
