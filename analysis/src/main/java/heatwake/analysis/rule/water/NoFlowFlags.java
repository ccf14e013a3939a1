package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What is told of times without water: how long, what stood still, and what to look at. */
final class NoFlowFlags {
  private static final double HALF = 0.5;

  private static final String SWITCH_HANGS = ", though the flow switch says that it flows";

  private final String rule;
  private final Evidence evidence;
  private final Timeline timeline;

  NoFlowFlags(String rule, Evidence evidence) {
    this.rule = rule;
    this.evidence = evidence;
    this.timeline = evidence.timeline();
  }

  /** The compressor ran on, or started, without water. */
  Flag ranDry(List<WaterLoss> losses) {
    double longestS = losses.stream().mapToDouble(loss -> loss.overlapS(timeline)).max().orElse(0);
    // A protection that trips and resets starts the compressor again and again without water.
    List<Stretch> runs = losses.stream().flatMap(loss -> loss.runs().stream()).toList();
    boolean heatGoesOn = losses.stream().anyMatch(loss -> loss.heatGoesOn(timeline));
    String text =
        "Compressor ran for "
            + Wording.duration(longestS)
            + " without water"
            + times(runs.size())
            + flowSentence(losses)
            + "; a heater should stop within 30 s"
            + (heatGoesOn
                ? "; the water's rise shows nothing of it, so check these readings too"
                : "");
    return flag(
        runs,
        Side.WATER,
        Severity.ALARM,
        text,
        List.of(
            "flow switch stuck closed, bridged or set too low",
            "pump stopped or lost its prime",
            "valve closed or bypass fully open"),
        NoFlow.SEE_PUMP_AND_VALVES);
  }

  /**
   * Water that was lost, before which the heater stopped as it should.
   *
   * @param how what the pump or the water did meanwhile, in words
   */
  Flag lost(List<WaterLoss> losses, String how) {
    double longestS = losses.stream().mapToDouble(loss -> loss.durationS(timeline)).max().orElse(0);
    boolean underHeating = losses.stream().anyMatch(WaterLoss::heatedUntil);
    String text =
        (underHeating ? "Water stopped while heating, for " : "No water for ")
            + Wording.duration(longestS)
            + times(losses.size())
            + ", "
            + how
            + flowSentence(losses)
            + (underHeating ? "" : belowSet(losses.get(0)));
    return flag(
        losses.stream().map(WaterLoss::stretch).toList(),
        Side.WATER,
        Severity.WARNING,
        text,
        List.of(
            "pump lost its prime: air on the suction side, low pool level",
            "strainer or filter blocked, or a valve closed",
            "pump tripped or cut out and came back",
            "flow switch or flow meter with a loose contact"),
        "Look at pool level, strainer basket and valves; watch the pump's sight glass for air.");
  }

  /** A pump that stops again and again, and the heater with it. */
  Flag pumpCutsOut(List<WaterLoss> stops) {
    double longestS = stops.stream().mapToDouble(loss -> loss.durationS(timeline)).max().orElse(0);
    return flag(
        stops.stream().map(WaterLoss::stretch).toList(),
        Side.WATER,
        Severity.WARNING,
        "The pump stopped "
            + stops.size()
            + " times while the heater heated, for up to "
            + Wording.duration(longestS)
            + ", and came back"
            + belowSet(stops.get(0))
            + "; the heater stopped each time as it should",
        List.of(
            "pump motor's protection trips and resets by itself: motor hot, stiff or blocked",
            "loose contact or failing relay in the pump's supply",
            "a timer or control switches it so often"),
        "At the next stop feel whether the pump's motor is hot; ask what else may switch it, and have"
            + " a licensed electrician check its supply.");
  }

  /** A clean stop of which nobody can say from the readings who did it. */
  Flag stopped(List<WaterLoss> losses) {
    double longestS = losses.stream().mapToDouble(loss -> loss.durationS(timeline)).max().orElse(0);
    return flag(
        losses.stream().map(WaterLoss::stretch).toList(),
        Side.UNDECIDED,
        Severity.INFO,
        "Water stopped while heating, for "
            + Wording.duration(longestS)
            + times(losses.size())
            + ", and came back"
            + flowSentence(losses)
            + "; the heater stopped as it should, and why the water did is not told",
        List.of(
            "pump switched off by its timer or by hand",
            "backwash, or a valve turned",
            "pump lost its prime or tripped"),
        "Ask whether pump or valves were switched then; pump-on tells it the next time.");
  }

  private static String times(int count) {
    return count == 1 ? "" : " (" + count + " times, longest given)";
  }

  private String belowSet(WaterLoss loss) {
    HeatCall call = HeatCall.over(evidence, loss.stretch().from(), loss.stretch().to());
    return call.belowSetK().isPresent()
        ? "; water " + Wording.kelvin(call.belowSetK().getAsDouble()) + " below the set temperature"
        : "";
  }

  private String flowSentence(List<WaterLoss> losses) {
    for (Channel channel : List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL)) {
      if (timeline.has(channel)) {
        double least = losses.get(0).stretch().mean(timeline.of(channel));
        if (!Double.isNaN(least)) {
          return ", " + channel.id() + " at " + Wording.flow(least);
        }
      }
    }
    double closed = losses.get(0).stretch().mean(timeline.of(Channel.FLOW_SWITCH));
    return Double.isNaN(closed) ? "" : closed < HALF ? ", flow switch open" : SWITCH_HANGS;
  }

  private Flag flag(
      List<Stretch> when,
      Side side,
      Severity severity,
      String text,
      List<String> causes,
      String nextCheck) {
    Set<Channel> channels = EnumSet.noneOf(Channel.class);
    for (Channel channel :
        List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL, Channel.FLOW_SWITCH, Channel.PUMP_ON)) {
      if (timeline.has(channel)) {
        channels.add(channel);
      }
    }
    return new Flag(
        rule,
        side,
        severity,
        timeline.timeMs(when.get(0).from()),
        timeline.timeMs(when.get(when.size() - 1).to() - 1),
        text,
        causes,
        nextCheck,
        channels);
  }
}
