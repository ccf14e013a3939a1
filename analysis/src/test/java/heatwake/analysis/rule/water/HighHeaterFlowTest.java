package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import org.junit.jupiter.api.Test;

/** The typical rig's nameplate wants 90 to 200 L/min. */
class HighHeaterFlowTest {
  private static final double L_PER_MIN = 1e-3 / 60;
  private final HighHeaterFlow rule = new HighHeaterFlow();

  private static AtDuty flow(double lPerMin, double standardLPerMin) {
    return AtDuty.sound()
        .set(DutyFigure.FLOW, lPerMin * L_PER_MIN, standardLPerMin * L_PER_MIN)
        .set(DutyFigure.RISE, 1.4, 0.05);
  }

  @Test
  void saysFlowAndLimit() {
    assertThat(onlyFlag(rule, flow(260, 5).evidence()).evidence())
        .isEqualTo(
            "Flow 260 L/min is above the heater's 200 L/min maximum for 60 min of steady running,"
                + " the water rises by only 1.4 K");
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, flow(205, 0).evidence());
    assertClear(rule, flow(215, 5.1).evidence());
    onlyFlag(rule, flow(215, 4.9).evidence());
  }

  /** Other heat in the line misleads a balance: no heater gives twice its plate. */
  @Test
  void aFlowThatMakesAnImpossibleHeatIsNone() {
    assertClear(rule, flow(260, 5).set(DutyFigure.HEAT_RATIO, 1.9, 0.12).evidence());
    onlyFlag(rule, flow(260, 5).set(DutyFigure.HEAT_RATIO, 1.4, 0.12).evidence());
  }

  /** A heater that starts and stops every two minutes: its plate asks for no steady running. */
  @Test
  void theOwnMeterTellsWithoutSteadyRunning() {
    assertThat(onlyFlag(rule, readings(shortRuns(260))).evidence())
        .isEqualTo(
            "Flow 260 L/min is above the heater's 200 L/min maximum while the compressor runs; the"
                + " heater never came to steady running");
    assertClear(rule, readings(shortRuns(202)));
    assertClear(rule, readings(shortRuns(1500)));
  }

  private static Recording shortRuns(double litresPerMinute) {
    RunBuilder run =
        RunBuilder.run().heatingAt(Channel.FLOW_HEATER, litresPerMinute).off(5).circulating(5);
    for (int k = 0; k < 12; k++) {
      run.fan(0.5).heating(2).circulating(2);
    }
    return run.recording();
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound(Rigs.bare()).evidence()))
        .isEqualTo("no heater.flow-max in the rig");
    assertThat(reason(rule, AtDuty.sound().without(DutyFigure.FLOW).evidence()))
        .isEqualTo("no flow through the heater known while it runs steadily");
  }
}
