package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.PastHeater;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Water stops while the compressor runs or heat is called for. */
public final class NoFlow implements Rule {
  /** A heater stops within this time of its flow switch opening; common practice, s. */
  private static final double STOPS_WITHIN_S = 30;

  /** A compressor that starts before water is seen may be a slow flow meter's doing, s; ours. */
  private static final double STARTS_AHEAD_S = 180;

  /**
   * In the first hour of a run somebody is there and may be testing the stop on lost flow, s; ours.
   */
  private static final double SOMEBODY_THERE_S = 3600;

  private static final double SHORT_TEST_S = 600;

  @Override
  public String id() {
    return "no-flow";
  }

  @Override
  public String summary() {
    return "Water stops while the compressor runs or heat is called for.";
  }

  @Override
  public String needs() {
    return "flow-heater, flow-total, flow-switch or pump-on, with power, current or pressures for the"
        + " compressor; pump-on tells a stopped pump from blocked water. Or water-in, water-out and"
        + " water-return, which tell that all water goes past the heater, or, where no flow-heater is"
        + " read, pressure-discharge, or water-in and water-out";
  }

  @Override
  public String limits() {
    return "Raised when the compressor runs on more than 30 s (or two readings) without water"
        + " (heaters stop within seconds of the flow switch opening: common practice; 180 s after a"
        + " start: ours), unless heat goes on as before and another probe contradicts, or for 15 min with a flow"
        + " meter alone (ours);"
        + " when water is lost for more than 60 s under a heating heater, and comes back within"
        + " 55 min where the pump is not known to run (ours); or when the pump runs for more than"
        + " 180 s without water while heat is called for (priming: common practice); or when, from"
        + " 3 min after a stop (lags of clips: common practice) and for 3 min, water-out stays above"
        + " half of its rise while water-return has under half of its part of that (mixing balance),"
        + " and the compressor tries to run meanwhile, for 3 min at most (ours); or when, without"
        + " flow-heater, the compressor stops twice or more at a high side (absolute) that has grown"
        + " within 2 min from under 1.15 to over 1.4 of where it stands while the heater runs"
        + " steadily (40 to 60 °C condensing are 1.6: saturation lines; nothing else takes a"
        + " condenser's cooling at once: common practice); or when, without flow-heater, the running"
        + " compressor has warmed water-out by more than 20 K over water-in, and by more than three"
        + " times what its rated heat gives at its least flow (rises are 2 to 3 K: common practice),"
        + " for 30 s and two readings, 10 K of it within 10 min, and to more than 5 K above the air"
        + " (ours). A loss with"
        + " the pump switched off is not raised here, nor one short test in the first hour. "
        + LostWater.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!WaterLoss.canBeSeen(timeline)
        && !PastHeater.canBeSeen(timeline)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)
        && !HotWater.canBeSeen(timeline)) {
      return Outcome.notEnoughData("no flow-heater, flow-total, flow-switch or pump-on reading");
    }
    List<WaterLoss> losses =
        WaterLoss.all(evidence).stream().filter(loss -> !loss.isMisread(timeline)).toList();
    List<WaterLoss> ranDry = losses.stream().filter(loss -> runsDry(evidence, loss)).toList();
    if (!ranDry.isEmpty()) {
      return Outcome.flagged(ranDryFlag(evidence, ranDry));
    }
    LostWater blocked = LostWater.thoughThePumpRan(evidence, losses);
    if (blocked.isAFault()) {
      return Outcome.flagged(lostFlag(evidence, blocked.losses(), "though the pump ran"));
    }
    Optional<Flag> behindValve =
        ShutValve.of(evidence)
            .map(shut -> shut.flag(id(), timeline))
            .or(() -> ShotUp.of(evidence).map(peaks -> peaks.flag(id())))
            .or(() -> HotWater.of(evidence).map(hot -> hot.flag(id(), timeline)));
    if (behindValve.isPresent()) {
      return Outcome.flagged(behindValve.get());
    }
    LostWater lost = LostWater.andCameBack(timeline, losses);
    if (lost.losses().isEmpty() || isATest(timeline, lost.losses())) {
      return Outcome.clear();
    }
    return Outcome.flagged(
        lost.isAFault()
            ? lostFlag(evidence, lost.losses(), "and came back")
            : stoppedFlag(timeline, lost.losses()));
  }

  private static boolean runsDry(Evidence evidence, WaterLoss loss) {
    Timeline timeline = evidence.timeline();
    double twoReadingsS = 2 * WaterLoss.slowestIntervalS(timeline);
    double limitS =
        loss.heatedUntil()
            ? Math.max(STOPS_WITHIN_S, twoReadingsS + 10)
            : STARTS_AHEAD_S + twoReadingsS;
    return loss.overlapS(timeline) > limitS;
  }

  private static boolean isATest(Timeline timeline, List<WaterLoss> lost) {
    return lost.size() == 1
        && lost.get(0).stretch().to() * timeline.stepS() < SOMEBODY_THERE_S
        && lost.get(0).durationS(timeline) < SHORT_TEST_S;
  }

  private Flag ranDryFlag(Evidence evidence, List<WaterLoss> losses) {
    Timeline timeline = evidence.timeline();
    double longestS = losses.stream().mapToDouble(loss -> loss.overlapS(timeline)).max().orElse(0);
    // A protection that trips and resets starts the compressor again and again without water.
    List<Stretch> runs = losses.stream().flatMap(loss -> loss.runs().stream()).toList();
    boolean heatGoesOn = losses.stream().anyMatch(loss -> loss.heatGoesOn(timeline));
    String text =
        "Compressor ran for "
            + Wording.duration(longestS)
            + " without water"
            + times(runs.size())
            + flowSentence(timeline, losses)
            + "; a heater should stop within 30 s"
            + (heatGoesOn
                ? "; the water's rise shows nothing of it, so check these readings too"
                : "");
    return flag(
        timeline,
        runs,
        Side.WATER,
        Severity.ALARM,
        text,
        List.of(
            "flow switch stuck closed, bridged or set too low",
            "pump stopped or lost its prime",
            "valve closed or bypass fully open"),
        "Switch the heater off. See that the pump runs and the valves are open, then have the flow"
            + " switch checked: it must open when the water stops.");
  }

  private Flag lostFlag(Evidence evidence, List<WaterLoss> losses, String how) {
    Timeline timeline = evidence.timeline();
    double longestS = losses.stream().mapToDouble(loss -> loss.durationS(timeline)).max().orElse(0);
    boolean underHeating = losses.stream().anyMatch(WaterLoss::heatedUntil);
    String text =
        (underHeating ? "Water stopped while heating, for " : "No water for ")
            + Wording.duration(longestS)
            + times(losses.size())
            + ", "
            + how
            + flowSentence(timeline, losses)
            + (underHeating ? "" : belowSet(evidence, losses.get(0)));
    return flag(
        timeline,
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

  /** A clean stop of which nobody can say from the readings who did it. */
  private Flag stoppedFlag(Timeline timeline, List<WaterLoss> losses) {
    double longestS = losses.stream().mapToDouble(loss -> loss.durationS(timeline)).max().orElse(0);
    return flag(
        timeline,
        losses.stream().map(WaterLoss::stretch).toList(),
        Side.UNDECIDED,
        Severity.INFO,
        "Water stopped while heating, for "
            + Wording.duration(longestS)
            + times(losses.size())
            + ", and came back"
            + flowSentence(timeline, losses)
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

  private static String belowSet(Evidence evidence, WaterLoss loss) {
    HeatCall call = HeatCall.over(evidence, loss.stretch().from(), loss.stretch().to());
    return call.belowSetK().isPresent()
        ? "; water " + Wording.kelvin(call.belowSetK().getAsDouble()) + " below the set temperature"
        : "";
  }

  private static String flowSentence(Timeline timeline, List<WaterLoss> losses) {
    for (Channel channel : List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL)) {
      if (timeline.has(channel)) {
        double least = losses.get(0).stretch().mean(timeline.of(channel));
        if (!Double.isNaN(least)) {
          return ", " + channel.id() + " at " + Wording.flow(least);
        }
      }
    }
    return timeline.has(Channel.FLOW_SWITCH) ? ", flow switch open" : "";
  }

  private Flag flag(
      Timeline timeline,
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
        id(),
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
