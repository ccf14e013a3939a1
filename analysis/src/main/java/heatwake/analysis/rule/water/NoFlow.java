package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.PastHeater;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

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

  /** What to do first where a heater ran with standing water. */
  static final String SEE_PUMP_AND_VALVES =
      "Switch the heater off. See that the pump runs and the valves before and after the heater"
          + " are open, then have the flow switch checked: it must open when the water stops.";

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
        + " (ours). One loss with"
        + " the pump switched off is not raised here, nor one short test in the first hour. "
        + PumpCutsOut.LIMITS
        + " "
        + LostWater.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!WaterLosses.canBeSeen(timeline)
        && !PastHeater.canBeSeen(timeline)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)
        && !HotWater.canBeSeen(timeline)) {
      return Outcome.notEnoughData("no flow-heater, flow-total, flow-switch or pump-on reading");
    }
    NoFlowFlags told = new NoFlowFlags(id(), evidence);
    List<WaterLoss> losses =
        WaterLosses.in(evidence).stream().filter(loss -> !loss.isMisread(timeline)).toList();
    List<WaterLoss> ranDry = losses.stream().filter(loss -> runsDry(evidence, loss)).toList();
    if (!ranDry.isEmpty()) {
      return Outcome.flagged(told.ranDry(ranDry));
    }
    LostWater blocked = LostWater.thoughThePumpRan(evidence, losses);
    if (blocked.isAFault()) {
      return Outcome.flagged(told.lost(blocked.losses(), "though the pump ran"));
    }
    Optional<Flag> behindValve =
        ShutValve.of(evidence)
            .map(shut -> shut.flag(id(), timeline))
            .or(() -> ShotUp.of(evidence).map(peaks -> peaks.flag(id())))
            .or(() -> HotWater.of(evidence).map(hot -> hot.flag(id(), timeline)));
    if (behindValve.isPresent()) {
      return Outcome.flagged(behindValve.get());
    }
    List<WaterLoss> cutOuts = PumpCutsOut.in(evidence, losses);
    if (!cutOuts.isEmpty()) {
      return Outcome.flagged(told.pumpCutsOut(cutOuts));
    }
    LostWater lost = LostWater.andCameBack(timeline, losses);
    if (lost.losses().isEmpty() || isATest(timeline, lost.losses())) {
      return Outcome.clear();
    }
    return Outcome.flagged(
        lost.isAFault() ? told.lost(lost.losses(), "and came back") : told.stopped(lost.losses()));
  }

  private static boolean runsDry(Evidence evidence, WaterLoss loss) {
    Timeline timeline = evidence.timeline();
    double twoReadingsS = 2 * WaterLosses.slowestIntervalS(timeline);
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
}
