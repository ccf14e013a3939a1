package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Set;

/** Heat is still called for when the pump stops: its hours, not the heater, limit the heat. */
public final class PumpHours implements Rule {
  /** Pump off for this long in all under a call for heat, s: heat that matters is lost; ours. */
  private static final double LIMITING_S = 2 * 3600;

  /** The same when it happens again and again, s; ours. */
  private static final double REPEATED_S = 3600;

  private static final int AGAIN_AND_AGAIN = 2;

  /** A pump known to be switched off for this long was not off by accident, s; ours. */
  private static final double SWITCHED_OFF_S = 900;

  /** Water away for this long with the pump's state unknown is a timer's doing, s; ours. */
  private static final double TIMER_FROM_S = 3600;

  /** Time before the stop over which the water temperature is looked at, s. */
  private static final double LOOK_BACK_S = 900;

  @Override
  public String id() {
    return "pump-hours";
  }

  @Override
  public String summary() {
    return "Heat is still called for when the pump stops: the pump's hours, not the heater, limit"
        + " the heat.";
  }

  @Override
  public String needs() {
    return "pump-on, flow-switch or a flow, with power, current or pressures for the compressor;"
        + " pool.setpoint and a water temperature make it certain. Without them water-in and"
        + " water-out, with power, current or pressures and pool.setpoint";
  }

  @Override
  public String limits() {
    return "Raised when the heater heats until the pump stops, with the water more than 0.5 K and 3"
        + " standard uncertainties below the set temperature where that is known (by the pool's probe;"
        + " where that leaves it open, by a surer one in the inlet), and the pump then rests for 2 h in all, or 1 h where it happens at least twice (ours). Where nothing but the pipes tells of the water it stopped with the heater if, 5 min after a stop, water-out keeps half of its rise (moving water carries it away within a minute or two: common practice), beyond 3 standard uncertainties of the pair, and water-in is 2 K from where it was 2 h later (a pool changes by 0.6 K/h at the most: common practice); it stands until a pipe changes by 1 K within 2 min (ours); the set temperature has to be known.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    List<Stretch> stops;
    if (WaterLosses.canBeSeen(timeline)) {
      stops =
          WaterLosses.in(evidence).stream()
              .filter(loss -> cutsHeating(evidence, loss))
              .map(WaterLoss::stretch)
              .toList();
    } else if (StandingPipes.canBeSeen(timeline)) {
      stops =
          StandingPipes.afterStops(evidence).stream()
              .filter(stood -> call(evidence, stood).calls())
              .toList();
    } else {
      return Outcome.notEnoughData("no pump-on, flow-switch or flow reading");
    }
    double restS = stops.stream().mapToDouble(stop -> stop.durationS(timeline)).sum();
    boolean limits =
        restS >= LIMITING_S || (stops.size() >= AGAIN_AND_AGAIN && restS >= REPEATED_S);
    return limits ? Outcome.flagged(flag(evidence, stops, restS)) : Outcome.clear();
  }

  private static boolean cutsHeating(Evidence evidence, WaterLoss loss) {
    Timeline timeline = evidence.timeline();
    if (!loss.heatedUntil() || loss.pump() == WaterLoss.Pump.RAN) {
      return false;
    }
    double least = loss.pump() == WaterLoss.Pump.STOOD ? SWITCHED_OFF_S : TIMER_FROM_S;
    return loss.durationS(timeline) >= least && call(evidence, loss.stretch()).mayCall();
  }

  private static HeatCall call(Evidence evidence, Stretch stop) {
    int back = (int) (LOOK_BACK_S / evidence.timeline().stepS());
    int from = stop.from();
    return HeatCall.over(evidence, Math.max(0, from - back), from);
  }

  private Flag flag(Evidence evidence, List<Stretch> stops, double restS) {
    Timeline timeline = evidence.timeline();
    Stretch first = stops.get(0);
    Stretch last = stops.get(stops.size() - 1);
    HeatCall call = call(evidence, last);
    StringBuilder text = new StringBuilder("Heater was still heating when the pump stopped");
    if (stops.size() > 1) {
      text.append(" (").append(stops.size()).append(" times)");
    }
    call.belowSetK()
        .ifPresent(
            below ->
                text.append(", with the water ")
                    .append(Wording.kelvin(below))
                    .append(" below the set temperature"));
    text.append("; pump then off for ").append(Wording.duration(restS));
    if (stops.size() > 1) {
      text.append(" in all");
    }
    return new Flag(
        id(),
        Side.SCHEDULE,
        Severity.WARNING,
        timeline.timeMs(first.from()),
        timeline.timeMs(last.to() - 1),
        text.toString(),
        List.of(
            "pump timer set too short for the heat the pool needs",
            "timer set for filtering only, or for a cheap tariff",
            "pump switched off by hand, or tripped"),
        "Compare the pump timer's hours with the heating hours needed; let the heater command the"
            + " pump if it can.",
        Set.of());
  }
}
