package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Flow that falls, or filter pressure that climbs, steadily over the run: a loading filter. */
public final class FallingFlow implements Rule {
  /** A fall of flow smaller than this over a run is not worth a call-out; ours. */
  private static final double MATERIAL_FALL = 0.08;

  /**
   * Climb of the filter pressure over a run that calls for cleaning: filters are backwashed at 20
   * to 25 % above the clean pressure, common practice; a run sees part of that.
   */
  private static final double MATERIAL_CLIMB = 0.12;

  /** Climb smaller than this is gauge noise; ours. */
  private static final double LEAST_CLIMB_PA = 5e3;

  /** Kendall's tau above which the movement is steady; ours. */
  private static final double STEADY_AGREEMENT = 0.7;

  /** A single step that makes up more than this is a valve or speed change, not a filter; ours. */
  private static final double GREATEST_STEP = 0.5;

  private static final double SHORTEST_S = 2 * 3600;

  @Override
  public String id() {
    return "falling-flow";
  }

  @Override
  public String summary() {
    return "The flow falls, or the filter pressure climbs, steadily over the run: a filter that"
        + " loads up.";
  }

  @Override
  public String needs() {
    return "flow-total, flow-heater or pressure-filter over at least 2 h with the pump running";
  }

  @Override
  public String limits() {
    return "Raised when the fitted line (median of slopes of 10 min means) falls by more than 8 %"
        + " in flow (ours), or climbs by more than 12 % and 5 kPa in filter pressure (filters are"
        + " backwashed at 20 to 25 % above clean: common practice), by more than 3 standard"
        + " uncertainties of its own scatter, steadily (Kendall's tau over 0.7; no single step"
        + " of half the change: ours), over 2 h or more.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<PumpTrend> total = PumpTrend.of(evidence, Channel.FLOW_TOTAL);
    Optional<PumpTrend> heater = PumpTrend.of(evidence, Channel.FLOW_HEATER);
    Optional<PumpTrend> filter = PumpTrend.of(evidence, Channel.PRESSURE_FILTER);
    if (total.isEmpty() && heater.isEmpty() && filter.isEmpty()) {
      return Outcome.notEnoughData(
          "no flow-total, flow-heater or pressure-filter over two hours of running water");
    }
    if (total.filter(FallingFlow::falls).isPresent()) {
      return Outcome.flagged(flag(Channel.FLOW_TOTAL, total.get(), filter));
    }
    if (heater.filter(FallingFlow::falls).isPresent()) {
      return Outcome.flagged(flag(Channel.FLOW_HEATER, heater.get(), filter));
    }
    if (filter.filter(FallingFlow::climbs).isPresent()) {
      return Outcome.flagged(flagFromPressure(filter.get()));
    }
    return Outcome.clear();
  }

  private static boolean isSteady(PumpTrend trend) {
    return trend.lengthS() >= SHORTEST_S
        && trend.agreement() >= STEADY_AGREEMENT
        && trend.largestStep() <= GREATEST_STEP
        && Math.abs(trend.change()) > Doubt.FACTOR * trend.standard();
  }

  private static boolean falls(PumpTrend trend) {
    return isSteady(trend) && trend.first() > 0 && trend.relativeChange() < -MATERIAL_FALL;
  }

  private static boolean climbs(PumpTrend trend) {
    return isSteady(trend)
        && trend.first() > 0
        && trend.relativeChange() > MATERIAL_CLIMB
        && trend.change() > LEAST_CLIMB_PA;
  }

  private Flag flag(Channel channel, PumpTrend flow, Optional<PumpTrend> filter) {
    Optional<PumpTrend> climbing = filter.filter(trend -> trend.change() > LEAST_CLIMB_PA);
    Set<Channel> channels = EnumSet.of(channel);
    if (climbing.isPresent()) {
      channels.add(Channel.PRESSURE_FILTER);
    }
    String what = channel == Channel.FLOW_TOTAL ? "Flow" : "Flow through the heater";
    return flag(
        flow,
        what
            + " fell from "
            + Wording.flow(flow.first())
            + " to "
            + Wording.flow(flow.last())
            + " ("
            + Wording.percent(flow.relativeChange())
            + ") in "
            + Wording.duration(flow.lengthS())
            + climbing
                .map(
                    trend ->
                        ", filter pressure climbed from "
                            + Wording.kilopascals(trend.first())
                            + " to "
                            + Wording.kilopascals(trend.last()))
                .orElse(""),
        channels);
  }

  private Flag flagFromPressure(PumpTrend filter) {
    return flag(
        filter,
        "Filter pressure climbed from "
            + Wording.kilopascals(filter.first())
            + " to "
            + Wording.kilopascals(filter.last())
            + " (+"
            + Wording.percent(filter.relativeChange())
            + ") in "
            + Wording.duration(filter.lengthS()),
        Set.of(Channel.PRESSURE_FILTER));
  }

  private Flag flag(PumpTrend trend, String evidence, Set<Channel> channels) {
    return new Flag(
        id(),
        Side.WATER,
        Severity.WARNING,
        trend.startMs(),
        trend.endMs(),
        evidence,
        List.of(
            "filter loading up",
            "strainer basket filling",
            "skimmer drawing air as the water level drops"),
        "Backwash or clean the filter and empty the strainer; the flow should come back at once.",
        channels);
  }
}
