package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.control.RunsPastSetpoint;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.OptionalDouble;

/** The heater stops when the water has the set temperature. */
final class SetpointStopCheck implements Check {
  /** It stops within this much of the set temperature, K; common practice (dead band and probe). */
  private static final double WITHIN_K = 1;

  /** Water goes on moving for this long after the stop, s: it was not the pump. */
  private static final double MOVES_ON_S = 120;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.SETPOINT_STOP;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    OptionalDouble setpointK = evidence.recording().rig().pool().setpointK();
    Timeline timeline = evidence.timeline();
    if (setpointK.isEmpty()) {
      return notMeasured("no pool.setpoint in the rig");
    }
    if (!timeline.has(Channel.WATER_POOL) && !timeline.has(Channel.WATER_IN)) {
      return notMeasured("no water-pool or water-in reading");
    }
    if (new RunsPastSetpoint().evaluate(evidence) instanceof Outcome.Flagged flagged) {
      return fail(flagged.flags().get(0).endMs(), flagged.flags().get(0).evidence());
    }
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    int on = (int) Math.ceil(MOVES_ON_S / timeline.stepS());
    for (Cycle cycle : evidence.cycles()) {
      if (cycle.stopMs().isEmpty()) {
        continue;
      }
      int stop = timeline.firstAtOrAfter(cycle.stopMs().getAsLong());
      double waterK = waterK(timeline, stop);
      if (movesOn(phases, stop, on) && Math.abs(waterK - setpointK.getAsDouble()) <= WITHIN_K) {
        return pass(
            cycle.stopMs().getAsLong(),
            "stopped with the water at "
                + Wording.celsius(waterK)
                + "; set are "
                + Wording.celsius(setpointK.getAsDouble()));
      }
    }
    return notSeen("a stop with the water at the set " + Wording.celsius(setpointK.getAsDouble()));
  }

  private static boolean movesOn(PhaseGrid phases, int stop, int on) {
    if (stop + on > phases.size()) {
      return false;
    }
    for (int i = stop; i < stop + on; i++) {
      if (!phases.is(i, Phase.CIRCULATING) && !phases.is(i, Phase.FAN)) {
        return false;
      }
    }
    return true;
  }

  private static double waterK(Timeline timeline, int stop) {
    int minute = (int) Math.max(1, 60 / timeline.stepS());
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_POOL)) {
      double waterK = Stretch.mean(timeline.of(channel), stop - minute, stop);
      if (!Double.isNaN(waterK)) {
        return waterK;
      }
    }
    return Double.NaN;
  }
}
