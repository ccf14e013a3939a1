package heatwake.analysis.rule.electrical;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/** Current above the nameplate, or a continuous load above 80 % of the breaker. */
public final class Overcurrent implements Rule {
  /** Mean over this time is compared with the nameplate: an inrush is over in seconds, s; ours. */
  private static final double SUSTAINED_S = 300;

  /** A sound heater may draw this much of its plate: plates are 5 % off; common practice. */
  static final double PLATE_TOLERANCE = 1.05;

  /** A load on for this long is continuous, s; NEC article 100 (from memory). */
  private static final double CONTINUOUS_S = 3 * 3600;

  /** Share of the breaker that a continuous load may take; NEC 210.20(A): 125 % of the load. */
  public static final double CONTINUOUS_SHARE = 0.8;

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
    return "Mean over 5 min, and 80 % of the instants in it, above 105 % of heater.current-max (plates are tolerated to be 5 %"
        + " off: common practice) in more than one reading (ours), or mean over 3 h of unbroken load above 80 % of"
        + " heater.breaker (NEC 210.20(A) as an example; local code decides), each by more than 3"
        + " standard uncertainties of the reading. What stands with the heater at rest and water moving (another"
        + " load on the conductor, 0.8 A and 10 % of the running current or more: ours) is left out: whether it hangs"
        + " on the heater's breaker is not known. Where the heater is never seen at rest with water moving (or maybe moving) for 20 s, such a load would not show, and the side stays open.";
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
    OptionalDouble besideA = evidence.load().amperes();
    double[] current = less(timeline.of(Channel.CURRENT), besideA.orElse(0));
    OvercurrentFlag told = new OvercurrentFlag(id(), timeline);
    List<Flag> flags = new ArrayList<>();
    if (heater.currentMaxA().isPresent()) {
      double limitA = heater.currentMaxA().getAsDouble();
      SustainedLoads loads = SustainedLoads.of(timeline, current, SUSTAINED_S, 0);
      List<Stretch> over =
          loads.whereMean(above(PLATE_TOLERANCE * limitA, probe), limitA, SUSTAINED_SHARE).stream()
              .filter(one -> isReadAgain(evidence, one, limitA + besideA.orElse(0)))
              .toList();
      if (!over.isEmpty()) {
        flags.add(told.overNameplate(current, besideA, over, limitA));
      }
    }
    if (heater.breakerA().isPresent() && flags.isEmpty()) {
      double limitA = CONTINUOUS_SHARE * heater.breakerA().getAsDouble();
      double onA = ON_SHARE * SustainedLoads.of(timeline, current, SUSTAINED_S, 0).highestA();
      SustainedLoads loads = SustainedLoads.of(timeline, current, CONTINUOUS_S, onA);
      List<Stretch> over = loads.whereMean(above(limitA, probe), 0, SUSTAINED_SHARE);
      if (!over.isEmpty()) {
        flags.add(
            told.overBreaker(
                loads.highestA(), CONTINUOUS_S, over, heater.breakerA().getAsDouble()));
      }
    }
    boolean alone = evidence.load().shownBy().contains(Channel.CURRENT);
    return Outcome.of(alone ? flags : flags.stream().map(OvercurrentFlag::maybeOfAnother).toList());
  }

  /**
   * Whether more than one reading is above a limit: a log of changes holds the one that fell on an
   * inrush until the next is sent.
   */
  private static boolean isReadAgain(Evidence evidence, Stretch over, double limitA) {
    Timeline timeline = evidence.timeline();
    Series readings = evidence.recording().series().get(Channel.CURRENT);
    long endMs = timeline.timeMs(over.to() - 1) + timeline.stepMs();
    int above = 0;
    int r = readings.firstAtOrAfter(timeline.timeMs(over.from()) - timeline.stepMs());
    while (r < readings.size() && readings.timeMs(r) <= endMs) {
      above += readings.value(r) > limitA ? 1 : 0;
      r++;
    }
    return above > 1;
  }

  private static double[] less(double[] current, double besideA) {
    return Arrays.stream(current).map(one -> one - besideA).toArray();
  }

  private static DoublePredicate above(double limitA, ProbeUncertainty probe) {
    return meanA -> Doubt.above(new Estimate(meanA, probe.at(meanA)), limitA);
  }
}
