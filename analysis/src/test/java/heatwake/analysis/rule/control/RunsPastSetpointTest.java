package heatwake.analysis.rule.control;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** The typical rig sets 28 Cel; probes have a standard uncertainty of 0.1 K. */
class RunsPastSetpointTest {
  private final RunsPastSetpoint rule = new RunsPastSetpoint();

  private static RunBuilder heatingAt(double poolCel) {
    return RunBuilder.run().pool(poolCel).circulating(5).heating(40);
  }

  @Test
  void saysHowFarAbove() {
    assertThat(onlyFlag(rule, readings(heatingAt(29.6).recording())).evidence())
        .isEqualTo(
            "Heated on for 40 min with the water up to 29.6 °C, 1.6 K above the set 28.0 °C");
  }

  @Test
  void withinTheUncertaintyOfTheProbeItIsClear() {
    assertClear(rule, readings(heatingAt(29.25).recording()));
    onlyFlag(rule, readings(heatingAt(29.35).recording()));
  }

  @Test
  void restingAboveTheSetTemperatureIsClear() {
    assertClear(rule, readings(RunBuilder.run().pool(30).circulating(60).recording()));
  }

  @Test
  void shortOvershootIsClear() {
    assertClear(
        rule,
        readings(RunBuilder.run().pool(30).circulating(5).heating(10).circulating(5).recording()));
  }

  @Test
  void theCoolerOfPoolAndInletCounts() {
    assertClear(rule, readings(heatingAt(28).set(Channel.WATER_POOL, 30).heating(60).recording()));
  }

  @Test
  void needsASetTemperature() {
    assertThat(reason(rule, readings(heatingAt(29).rig(Rigs.bare()).recording())))
        .isEqualTo("no pool.setpoint in the rig");
  }

  @Test
  void needsAWaterTemperature() {
    assertThat(reason(rule, readings(RunBuilder.run().only(Channel.POWER).heating(30).recording())))
        .isEqualTo("no water-pool or water-in reading");
  }
}
