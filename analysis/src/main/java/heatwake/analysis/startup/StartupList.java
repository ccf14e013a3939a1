package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.rule.Evidence;
import java.util.List;

/** The checks of a start-up, in the order in which a start-up goes through them. */
public final class StartupList {
  private static final List<Check> CHECKS =
      List.of(
          new ProbeZeroCheck(),
          new StandingPressureCheck(),
          new FlowMadeCheck(),
          new FanStartCheck(),
          new CompressorStartCheck(),
          new PressureRiseCheck(),
          new TemperatureRiseCheck(),
          new HeaterFlowCheck(),
          new CurrentCheck(),
          new VoltageCheck(),
          new RatedHeatCheck(),
          new FlowLossStopCheck(),
          new RestartDelayCheck(),
          new SetpointStopCheck());

  private StartupList() {}

  /** Goes through the list with the evidence of a run, or of as much of it as there is. */
  public static List<StartupCheck> of(Evidence evidence) {
    return CHECKS.stream().map(check -> check.look(evidence)).toList();
  }
}
