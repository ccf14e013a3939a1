package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import org.junit.jupiter.api.Test;

class PumpHoursTest {
  private final PumpHours rule = new PumpHours();

  private static RunBuilder heatingUntilThePumpStops() {
    return RunBuilder.run().off(5).circulating(5).fan(0.5).heating(120);
  }

  @Test
  void saysHowFarBelowTheSetTemperatureThePumpStopped() {
    var flag = onlyFlag(rule, readings(heatingUntilThePumpStops().off(180).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Heater was still heating when the pump stopped, with the water 2.0 K below the set"
                + " temperature; pump then off for 3.0 h");
    assertThat(flag.side()).isEqualTo(Side.SCHEDULE);
  }

  @Test
  void aPumpOffForLessThanTwoHoursIsNoLimit() {
    assertClear(rule, readings(heatingUntilThePumpStops().off(119).recording()));
  }

  @Test
  void againAndAgainCountsSooner() {
    var flag =
        onlyFlag(
            rule,
            readings(
                heatingUntilThePumpStops()
                    .off(35)
                    .circulating(5)
                    .heating(60)
                    .off(35)
                    .circulating(5)
                    .recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Heater was still heating when the pump stopped (2 times), with the water 2.0 K below"
                + " the set temperature; pump then off for 70 min in all");
  }

  @Test
  void waterAtTheSetTemperatureIsClear() {
    assertClear(
        rule,
        readings(RunBuilder.run().pool(27.6).circulating(5).heating(120).off(300).recording()));
  }

  @Test
  void aHeaterThatHadStoppedBeforeIsClear() {
    assertClear(rule, readings(heatingUntilThePumpStops().circulating(30).off(300).recording()));
  }

  /** Two pipes and a power meter; in air of 16 Cel standing water cools by kelvins in two hours. */
  private static RunBuilder byThePipes() {
    return RunBuilder.run()
        .every(10)
        .air(16)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
        .heatingAt(Channel.WATER_OUT, 2.5)
        .circulating(5)
        .heating(120);
  }

  @Test
  void pipesThatKeepTheirWarmthAndCoolTellOfThePumpToo() {
    var flag = onlyFlag(rule, readings(byThePipes().off(180).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Heater was still heating when the pump stopped, with the water 2.0 K below the set"
                + " temperature; pump then off for 3.0 h");
  }

  @Test
  void pipesWithWaterAfterTheStopAreClear() {
    assertClear(rule, readings(byThePipes().circulating(180).recording()));
    assertClear(rule, readings(byThePipes().circulating(20).off(300).recording()));
    // Back for the next run before two hours are over.
    assertClear(rule, readings(byThePipes().off(90).circulating(60).recording()));
    assertClear(rule, readings(byThePipes().off(90).circulating(5).heating(60).recording()));
  }

  @Test
  void pipesThatStayWhereTheyWereTellNothing() {
    assertClear(rule, readings(byThePipes().air(25).off(300).recording()));
  }

  @Test
  void pipesAtTheSetTemperatureAreClear() {
    RunBuilder run = byThePipes().pool(27.6).heating(60).off(300);
    assertClear(rule, readings(run.recording()));
    assertClear(rule, readings(byThePipes().rig(Rigs.bare()).off(300).recording()));
  }

  @Test
  void needsAWaterReading() {
    assertThat(reason(rule, readings(RunBuilder.run().only(Channel.POWER).heating(9).recording())))
        .isEqualTo("no pump-on, flow-switch or flow reading");
  }

  /** 0.5 K and three times 0.8 K are more than the 2.0 K seen in the pool; the inlet is surer. */
  @Test
  void aPoorPoolProbeIsBorneOutByASurerInlet() {
    RunBuilder run = heatingUntilThePumpStops().rig(poor(0.8, 0.1)).off(180);
    onlyFlag(rule, readings(run.recording()));
  }

  /**
   * The mean of two independent probes is surer by the root of two (JCGM 100:2008, 5.1): 0.5 K and
   * three times 0.57 K are more than 2.0 K, three times 0.42 K are less.
   */
  @Test
  void twoPoorProbesTogetherAreSurerThanEach() {
    assertClear(
        rule, readings(heatingUntilThePumpStops().rig(poor(0.8, 0.8)).off(180).recording()));
    onlyFlag(rule, readings(heatingUntilThePumpStops().rig(poor(0.6, 0.6)).off(180).recording()));
  }

  private static Rig poor(double poolK, double inletK) {
    return Rigs.withProbe(
        Rigs.withProbe(Rigs.typical(), Channel.WATER_POOL, new ReadingUncertainty.Absolute(poolK)),
        Channel.WATER_IN,
        new ReadingUncertainty.Absolute(inletK));
  }
}
