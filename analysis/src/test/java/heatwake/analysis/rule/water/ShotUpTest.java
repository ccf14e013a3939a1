package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * Water is lost behind a stuck flow switch, and nothing but power and pressures is read. R-410A
 * condenses at 40 Cel at 2.3 MPa gauge and at 62 Cel at 4.0 MPa (dew; property tables, from
 * memory).
 */
class ShotUpTest {
  private final NoFlow rule = new NoFlow();

  private static RunBuilder night() {
    return RunBuilder.run()
        .every(5)
        .only(
            Channel.WATER_IN,
            Channel.WATER_OUT,
            Channel.POWER,
            Channel.PRESSURE_DISCHARGE,
            Channel.PRESSURE_SUCTION)
        .off(5)
        .circulating(5)
        .heating(60);
  }

  /** Without its water a condenser warms by 20 K within a minute: power doubles with the lift. */
  private static RunBuilder dry(RunBuilder run, double minutes) {
    run.heatingAt(Channel.PRESSURE_DISCHARGE, 6500).heatingAt(Channel.POWER, 4600);
    return run.heating(minutes)
        .heatingAt(Channel.PRESSURE_DISCHARGE, 2300)
        .heatingAt(Channel.POWER, 2700);
  }

  private static RunBuilder tries(double minutes) {
    RunBuilder run = dry(night(), 0.5).circulating(11);
    for (int k = 0; k < 3; k++) {
      dry(run, minutes).circulating(11);
    }
    return run.heating(60);
  }

  @Test
  void stopsAtAHighSideThatShotUpAreNoWater() {
    Flag flag = onlyFlag(rule, readings(tries(0.6).recording()));
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.evidence())
        .startsWith("High side shot up from 2.30 MPa to ")
        .endsWith(
            " within 2 min until the compressor stopped, 4 times: the heater had lost its water");
  }

  /** Twenty seconds at twice the running power are a run, since the pressures part meanwhile. */
  @Test
  void aRunThatPartsThePressuresIsACycleHoweverShort() {
    assertThat(readings(tries(0.35).recording()).cycles()).hasSize(5);
  }

  /** The same draw of a motor that does not turn is none. */
  @Test
  void aShortDrawThatLiftsNothingIsNoCycle() {
    RunBuilder run = night().circulating(11);
    for (int k = 0; k < 3; k++) {
      run.set(Channel.POWER, 4600).circulating(0.35).free(Channel.POWER).circulating(11);
    }
    assertThat(readings(run.heating(60).recording()).cycles()).hasSize(2);
  }

  /** Scale, gas or charge keep it high for good. */
  @Test
  void aHighSideThatIsAlwaysHighHasItsWater() {
    RunBuilder run = night().heatingAt(Channel.PRESSURE_DISCHARGE, 3600).heating(60);
    for (int k = 0; k < 3; k++) {
      run.circulating(11).heating(8);
    }
    assertClear(rule, readings(run.circulating(11).recording()));
  }

  @Test
  void ordinaryShortCyclesAreClear() {
    RunBuilder run = night();
    for (int k = 0; k < 4; k++) {
      run.circulating(5).heating(2);
    }
    assertClear(rule, readings(run.circulating(11).recording()));
  }

  /** Where the heater's own meter shows water, it is something else. */
  @Test
  void aMeterInTheHeatersBranchKnowsBetter() {
    RunBuilder run = dry(night().with(Channel.FLOW_HEATER).heating(30), 0.5).circulating(11);
    dry(run, 0.6).circulating(11);
    assertClear(rule, readings(dry(run, 0.6).circulating(11).recording()));
  }
}
