package heatwake.analysis.startup;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.control.RunsPastSetpoint;
import heatwake.analysis.rule.refrigerant.HighPressure;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The heater stops when the water has the set temperature. A stop with the pump, a stop with the
 * high side at its limit, and one after which the compressor is soon back are no stops of this
 * control: something else brought them about.
 */
final class SetpointStopCheck implements Check {
  /**
   * It stops within this much of the set temperature, K; ours: what a control's sensor is off
   * (common practice), its dead band lies below the temperature at which it starts again.
   */
  private static final double WITHIN_K = 0.5;

  /** Water goes on moving for this long after the stop, s: it was not the pump. */
  private static final double MOVES_ON_S = 120;

  /**
   * A pool cools by a few tenths of a kelvin in an hour: no dead band brings the compressor back
   * within this time, ms; ours.
   */
  private static final long SOON_BACK_MS = 600_000;

  /** A trip is over within this time of what brought it about, ms; ours. */
  private static final long TRIPS_WITHIN_MS = 120_000;

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
    if (!CompressorStart.canBeSeen(timeline)) {
      return notMeasured("no power, current, pressure or temperature pair for the compressor");
    }
    if (new RunsPastSetpoint().evaluate(evidence) instanceof Outcome.Flagged flagged) {
      return fail(flagged.flags().get(0).endMs(), flagged.flags().get(0).evidence());
    }
    double setK = setpointK.getAsDouble();
    PhaseGrid phases = evidence.phaseGrid();
    int on = timeline.instants(MOVES_ON_S);
    List<Flag> trips =
        new HighPressure().evaluate(evidence) instanceof Outcome.Flagged flagged
            ? flagged.flags()
            : List.of();
    Optional<String> other = Optional.empty();
    for (Cycle cycle : evidence.cycles()) {
      if (cycle.stopMs().isEmpty()) {
        continue;
      }
      long stopMs = cycle.stopMs().getAsLong();
      double waterK = waterK(timeline, timeline.firstAtOrAfter(stopMs));
      boolean isLast = timeline.firstAtOrAfter(stopMs) + on > timeline.size();
      if (Double.isNaN(waterK) || isLast) {
        continue;
      }
      String text = "stopped with the water at " + beside(waterK, setK);
      if (Math.abs(waterK - setK) > WITHIN_K) {
        other = Optional.of(text);
      } else if (!movesOn(phases, timeline.firstAtOrAfter(stopMs), on)) {
        other = Optional.of(text + ", but the water stopped too");
      } else if (switchOpens(timeline, stopMs)) {
        other = Optional.of(text + ", but the flow switch opened");
      } else if (trips.stream().anyMatch(flag -> explains(flag, stopMs))) {
        other = Optional.of(text + ", but with the high side near its limit");
      } else if (soonBack(cycle)) {
        other = Optional.of(text + ", but started again " + rest(cycle) + " later");
      } else {
        return pass(stopMs, text);
      }
    }
    return notSeen(
        "a stop with the water at the set "
            + Wording.celsius(setK)
            + other.map(text -> "; the last " + text).orElse(""));
  }

  /** {@code 27.9 °C, 0.1 K below the set 28.0 °C}. */
  private static String beside(double waterK, double setK) {
    String off = Wording.kelvin(Math.abs(waterK - setK));
    return Wording.celsius(waterK)
        + (off.equals(Wording.kelvin(0))
            ? ", the set temperature"
            : ", "
                + off
                + (waterK < setK ? " below" : " above")
                + " the set "
                + Wording.celsius(setK));
  }

  private static boolean explains(Flag trip, long stopMs) {
    return trip.startMs() <= stopMs && stopMs <= trip.endMs() + TRIPS_WITHIN_MS;
  }

  private static boolean switchOpens(Timeline timeline, long stopMs) {
    double[] closed = timeline.of(Channel.FLOW_SWITCH);
    int to = Math.min(timeline.size(), timeline.firstAtOrAfter(stopMs + TRIPS_WITHIN_MS));
    for (int i = timeline.firstAtOrAfter(stopMs - TRIPS_WITHIN_MS); i < to; i++) {
      if (closed[i] < 0.5) {
        return true;
      }
    }
    return false;
  }

  private static boolean soonBack(Cycle cycle) {
    return cycle.nextStartMs().isPresent()
        && cycle.nextStartMs().getAsLong() - cycle.stopMs().orElseThrow() < SOON_BACK_MS;
  }

  private static String rest(Cycle cycle) {
    return Wording.duration(
        (cycle.nextStartMs().orElseThrow() - cycle.stopMs().orElseThrow()) / 1e3);
  }

  private static boolean movesOn(PhaseGrid phases, int stop, int on) {
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
