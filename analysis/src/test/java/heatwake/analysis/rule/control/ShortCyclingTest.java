package heatwake.analysis.rule.control;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class ShortCyclingTest {
  private final ShortCycling rule = new ShortCycling();

  /** Starts at equal distance. */
  private static RunBuilder cycling(int starts, double runMinutes, double restMinutes) {
    RunBuilder run = RunBuilder.run().circulating(10);
    for (int k = 0; k < starts; k++) {
      run.heating(runMinutes).circulating(restMinutes);
    }
    return run.circulating(30);
  }

  @Test
  void countsStartsAndTimesTheShortestRest() {
    Flag flag = onlyFlag(rule, readings(cycling(7, 5, 4).recording()));
    assertThat(flag.evidence())
        .isEqualTo("7 starts in 54 min, shortest rest 4 min, longest run 5 min");
    assertThat(flag.causes().get(0)).startsWith("a protection cuts out");
  }

  @Test
  void giveTheBusiestHourOfALongBout() {
    Flag flag = onlyFlag(rule, readings(cycling(12, 6, 4).recording()));
    assertThat(flag.evidence())
        .isEqualTo("7 starts in 60 min, shortest rest 4 min, longest run 6 min; 12 starts in all");
  }

  @Test
  void fourStartsWithin45MinutesAreTheLimit() {
    assertThat(onlyFlag(rule, readings(cycling(4, 10, 4.9).recording())).evidence())
        .startsWith("4 starts in 45 min");
    assertClear(rule, readings(cycling(4, 10, 5.2).recording()));
    assertClear(rule, readings(cycling(3, 5, 4).recording()));
  }

  @Test
  void defrostsAreNoStarts() {
    RunBuilder run = RunBuilder.run().air(0).circulating(10).heating(20);
    for (int k = 0; k < 6; k++) {
      run.defrost(4).heating(10);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void atTheSetTemperatureTheSensorIsTheFirstSuspect() {
    RunBuilder run = RunBuilder.run().pool(28).circulating(10);
    for (int k = 0; k < 6; k++) {
      run.heating(4).circulating(5);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).causes().get(0))
        .startsWith("water sensor or dead band");
  }

  /**
   * The flow stands, but its switch opens and stops the heater: the log says so, read seldom too.
   */
  @Test
  void aSwitchThatOpensAtTheStopsIsTold() {
    RunBuilder run = RunBuilder.run().every(30).circulating(10);
    for (int k = 0; k < 6; k++) {
      run.heating(5).set(Channel.FLOW_SWITCH, 0).circulating(1).free(Channel.FLOW_SWITCH);
      run.circulating(4);
    }
    Flag flag = onlyFlag(rule, readings(run.circulating(20).recording()));
    assertThat(flag.evidence()).endsWith("; the flow switch opened at 6 of these stops");
    assertThat(flag.causes().get(0)).startsWith("flow switch flutters");
    assertThat(flag.nextCheck()).startsWith("See why the flow switch opens");
  }

  /** A register of 10 Wh read every half minute: 2.7 kW take 13 s for a step. */
  @Test
  void anEnergyCounterTellsStartsToo() {
    Flag flag = onlyFlag(rule, readings(counted(6, 4, 5).recording()));
    assertThat(flag.evidence()).startsWith("6 starts in 4");
    assertThat(flag.evidence()).endsWith("; by the energy counter, read every 30 s");
    assertClear(rule, readings(counted(5, 10, 6).recording()));
    assertClear(rule, readings(counted(1, 60, 6).recording()));
  }

  private static RunBuilder counted(int starts, double runMinutes, double restMinutes) {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.ENERGY)
            .resolution(Channel.ENERGY, 0.01)
            .every(30)
            .heatingAt(Channel.WATER_OUT, 3)
            .circulating(20);
    for (int k = 0; k < starts; k++) {
      run.heating(runMinutes).circulating(restMinutes);
    }
    return run.circulating(30);
  }

  @Test
  void needsAReadingThatShowsTheCompressor() {
    RunBuilder run = RunBuilder.run().only(Channel.WATER_IN, Channel.WATER_OUT);
    assertThat(reason(rule, readings(run.circulating(5).heating(30).recording())))
        .isEqualTo("no power, current, pressure-discharge or energy read at least every 2 min");
  }
}
