package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.water.WaterLoss;
import heatwake.analysis.rule.water.WaterLosses;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.OptionalDouble;

/** The heater stops when the water stops. */
final class FlowLossStopCheck implements Check {
  /** A heater stops within this time of its flow switch opening; common practice, s. */
  private static final double STOPS_WITHIN_S = 30;

  /**
   * Water takes so long to run down once its flow switch has opened; common practice, s. The heater
   * has stopped by then.
   */
  private static final double RUNS_DOWN_S = 15;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.FLOW_LOSS_STOP;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!WaterLosses.canBeSeen(timeline)) {
      return notMeasured("no flow-heater, flow-total, flow-switch or pump-on reading");
    }
    if (!timeline.has(Channel.POWER)
        && !timeline.has(Channel.CURRENT)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return notMeasured("no power, current or pressure-discharge for the compressor");
    }
    Optional<WaterLoss> loss =
        WaterLosses.in(evidence).stream()
            .filter(one -> stopsUnderLoad(evidence, one) && !one.isMisread(timeline))
            .findFirst();
    if (loss.isEmpty()) {
      return notSeen("switch the pump off while the heater runs");
    }
    double overlapS = loss.get().overlapS(timeline);
    double allowedS = Math.max(STOPS_WITHIN_S, 2 * WaterLosses.slowestIntervalS(timeline) + 10);
    long atMs = timeline.timeMs(loss.get().stretch().from());
    String text =
        overlapS <= timeline.stepS()
            ? "compressor stopped with the water"
            : "compressor stopped " + Wording.duration(overlapS) + " after the water";
    if (overlapS > allowedS) {
      return fail(atMs, text + "; it should within " + Wording.duration(STOPS_WITHIN_S));
    }
    if (FlowSwitchDoubt.staysClosed(timeline, loss.get())) {
      return fail(
          atMs,
          text
              + ", but flow-switch stayed closed for "
              + Wording.duration(loss.get().durationS(timeline))
              + " without water");
    }
    OptionalDouble cutOutPa = FlowSwitchDoubt.cutOutPa(evidence, loss.get());
    return cutOutPa.isPresent()
        ? notSeen(
            text
                + ", with "
                + Wording.megapascals(cutOutPa.getAsDouble())
                + " on the high side: its pressure switch may have stopped it; have the flow switch"
                + " tested by itself")
        : pass(atMs, text);
  }

  /** The compressor ran at the moment, or just before, and did not stop long before the water. */
  private static boolean stopsUnderLoad(Evidence evidence, WaterLoss loss) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    int at = loss.stretch().from();
    int before =
        timeline.instants(Math.max(RUNS_DOWN_S, 2 * WaterLosses.slowestIntervalS(timeline)));
    for (int i = Math.max(0, at - before); i <= at && i < phases.size(); i++) {
      if (phases.compressorRuns(i)) {
        return true;
      }
    }
    return false;
  }
}
