package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import org.junit.jupiter.api.Test;

/** A flow reading that goes on through still water, and those that only seem to. */
class FlowGoesOnTest {
  private final ProbeStuck rule = new ProbeStuck();

  /** Repeats what the probe last said. */
  private static RunBuilder.Change hungAt(double value) {
    return (atS, truth) -> value;
  }

  private static RunBuilder night() {
    return RunBuilder.run().noise(Channel.WATER_IN, 0.02).noise(Channel.WATER_OUT, 0.02);
  }

  @Test
  void aFlowReadsOnThoughThePumpStopped() {
    RunBuilder run = night().circulating(10).heating(60);
    run.change(Channel.FLOW_HEATER, hungAt(149.3)).heating(30).off(60);
    Flag flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.FLOW_HEATER);
    assertThat(flag.evidence())
        .startsWith("flow-heater stood at 149.3 L/min for 90 min")
        .endsWith("pump-on and flow-switch say that the water stood meanwhile");
  }

  /** Flow switch and pump are two witnesses of their own; the meter says what it said before. */
  @Test
  void theWaterStandsWhateverAHungMeterSays() {
    RunBuilder run = night().circulating(10).heating(60);
    run.change(Channel.FLOW_HEATER, hungAt(149.3)).heating(30);
    long stopped = run.nowMs();
    Recording recording = run.off(60).recording();
    Phases phases = Phases.of(Timeline.of(recording), recording);
    assertThat(phases.at(stopped + 20 * 60_000)).isEqualTo(Phase.OFF);
    assertThat(phases.at(stopped - 20 * 60_000)).isEqualTo(Phase.STEADY);
  }

  /** A shorter standstill than that of a pump that rests all day (by hand). */
  @Test
  void itNeedNotBeTheLongestStandstill() {
    RunBuilder run = night().off(240).circulating(10).heating(60);
    run.change(Channel.FLOW_HEATER, hungAt(149.3)).heating(30).off(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("flow-heater stood at 149.3 L/min for 90 min");
  }

  @Test
  void soDoesTheWholeFlow() {
    RunBuilder run =
        night().with(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER).circulating(10).heating(60);
    run.change(Channel.FLOW_TOTAL, hungAt(251)).heating(30).off(60);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.FLOW_TOTAL);
  }

  /** A meter that turns in steps of 10 L/min shows one value as long as the pump runs. */
  @Test
  void aCoarseMeterOfAPumpThatRunsIsClear() {
    assertClear(
        rule,
        readings(
            night()
                .resolution(Channel.FLOW_HEATER, 10)
                .noise(Channel.FLOW_HEATER, 1)
                .circulating(20)
                .heating(90)
                .circulating(60)
                .off(60)
                .recording()));
  }

  /** Meters that count pulses say the last flow until one is overdue: common practice. */
  @Test
  void aMeterThatWaitsForAPulseIsClear() {
    RunBuilder run = night().resolution(Channel.FLOW_HEATER, 10).circulating(20).heating(60);
    run.change(Channel.FLOW_HEATER, hungAt(150)).off(2).free(Channel.FLOW_HEATER).off(60);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aPumpThatRunsThoughItsContactFellIsClear() {
    RunBuilder run = night().resolution(Channel.FLOW_HEATER, 10).circulating(20).heating(30);
    assertClear(rule, readings(run.set(Channel.PUMP_ON, 0).heating(60).recording()));
  }

  /** A variable-speed pump that holds its flow while the filter fills: the gauge climbs. */
  @Test
  void aPumpThatHoldsItsFlowIsClear() {
    RunBuilder run = night().with(Channel.PRESSURE_FILTER).circulating(20).heating(30);
    for (int k = 0; k < 10; k++) {
      run.set(Channel.PRESSURE_FILTER, 80 + 4 * k).heating(10);
    }
    assertClear(rule, readings(run.free(Channel.PRESSURE_FILTER).circulating(10).recording()));
  }

  /**
   * At half speed a pump gives half the flow at a quarter of the head (affinity laws): the filter's
   * gauge falls from 80 to 20 kPa less the suction, and the heater's flow switch opens.
   */
  @Test
  void aPumpThatHoldsASlowSpeedIsClear() {
    RunBuilder run =
        night()
            .with(Channel.PRESSURE_FILTER, Channel.FLOW_TOTAL)
            .resolution(Channel.FLOW_HEATER, 5)
            .circulating(20)
            .heating(60);
    run.set(Channel.FLOW_HEATER, 75)
        .set(Channel.FLOW_TOTAL, 125)
        .set(Channel.PRESSURE_FILTER, 12)
        .set(Channel.FLOW_SWITCH, 0)
        .circulating(120);
    assertClear(rule, readings(run.recording()));
  }

  /** The bypass takes the heater out of the pool's water, which goes on. */
  @Test
  void aHeaterThatIsBypassedIsClear() {
    RunBuilder run =
        night()
            .with(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER)
            .resolution(Channel.FLOW_TOTAL, 10)
            .circulating(20)
            .heating(60);
    run.set(Channel.FLOW_HEATER, 0).set(Channel.FLOW_SWITCH, 0).circulating(120);
    assertClear(rule, readings(run.recording()));
  }
}
