package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static heatwake.analysis.rule.measurement.SlippingClips.night;
import static heatwake.analysis.rule.measurement.SlippingClips.slipsAt70Min;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class ProbeSlippedTest {
  private final ProbeSlipped rule = new ProbeSlipped();

  /** From 40 min on the probe goes towards air within half an hour, by a share of the way. */
  private static RunBuilder.Change towards(double airCel, double share) {
    return (atS, cel) ->
        cel + share * Math.min(1, Math.max(0, (atS - 2400) / 1800)) * (airCel - cel);
  }

  @Test
  void inletDriftsToTheAir() {
    RunBuilder run = night().change(Channel.WATER_IN, towards(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "water-in went from 26.0 °C to 19.4 °C, towards the air at 15.0 °C, while water-out"
                + " moved by 0.0 K");
  }

  @Test
  void outletDriftsToTheAirAndTheRiseIsGone() {
    RunBuilder run = night().change(Channel.WATER_OUT, towards(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void outletDriftsWhileWaterCirculates() {
    RunBuilder run =
        RunBuilder.run()
            .air(15)
            .circulating(40)
            .change(Channel.WATER_OUT, towards(15, 0.3))
            .circulating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void aPoolThatCoolsTakesBothPipesAlong() {
    RunBuilder run = RunBuilder.run().air(10).circulating(40);
    for (int k = 0; k < 20; k++) {
      run.pool(26 - 0.15 * k).circulating(10);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aHeaterThatLosesHeatIsNotAProbe() {
    RunBuilder run =
        night()
            .heating(30)
            .heatingAt(Channel.WATER_OUT, 0.1)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1500)
            .heatingAt(Channel.POWER, 1400)
            .heating(120);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aRiseThatFallsWithMoreFlowIsNotAProbe() {
    RunBuilder run =
        night()
            .heating(30)
            .heatingAt(Channel.WATER_OUT, 0.3)
            .heatingAt(Channel.FLOW_HEATER, 600)
            .heating(120);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aDriftUnderTheLimitIsClear() {
    RunBuilder run = night().change(Channel.WATER_IN, towards(15, 0.08)).heating(150);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void outletSlipsAndPartOfTheRiseIsLeftButTheCondensingTemperatureStays() {
    RunBuilder run = RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3);
    run.change(Channel.WATER_OUT, slipsAt70Min(20, 0.25)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "water-out went from 29.0 °C to 26.7 °C, towards the air at 20.0 °C, while water-in"
                + " moved by 0.0 K");
  }

  @Test
  void aRiseThatFallsWithTheCondensingTemperatureIsTheMachines() {
    RunBuilder run =
        RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3).heating(60);
    // A real fall by 2.2 K takes the condensing temperature along: 2300 to 2200 kPa is 1.9 K.
    run.heatingAt(Channel.WATER_OUT, 0.8).heatingAt(Channel.PRESSURE_DISCHARGE, 2200).heating(90);
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void outletSlipsLateInARunInWhichThePoolWarms() {
    RunBuilder run = RunBuilder.run().air(20).off(2).circulating(8).heatingAt(Channel.WATER_OUT, 3);
    for (int k = 0; k < 36; k++) {
      run.pool(24 + 0.06 * k).heatingAt(Channel.PRESSURE_DISCHARGE, 2300 + 3 * k);
      if (k == 24) {
        run.change(Channel.WATER_OUT, (atS, cel) -> cel + 0.3 * (20 - cel));
      }
      run.heating(10);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.WATER_OUT);
  }

  @Test
  void withoutAnAirProbeAnInletThatFallsAtEqualPowerIsToldByTheRise() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .off(2)
            .circulating(8);
    run.change(Channel.WATER_IN, slipsAt70Min(15, 0.6)).heating(150);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("water-in went from 26.0 °C to 19.4 °C while water-out moved by 0.0 K");
  }

  @Test
  void needsAnAirTemperatureOrSomethingOfTheMachine() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER)
                        .heating(20)
                        .recording())))
        .isEqualTo("no air-in or air-ambient, power or pressure-discharge reading");
  }

  /**
   * A probe that hung at 22.0 Cel while the pool warmed, and reads rightly again at 25.5 Cel, has
   * stepped towards the air at 30 Cel; it sits on its pipe all the while.
   */
  @Test
  void aStuckProbeThatThawsHasNotSlipped() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .air(30)
            .pool(22)
            .noise(Channel.WATER_IN, 0.05)
            .noise(Channel.WATER_OUT, 0.05)
            .noise(Channel.POWER, 10)
            .resolution(Channel.WATER_IN, 0.01)
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> 22);
    for (int k = 0; k < 24; k++) {
      run.pool(22 + 3.5 * k / 24).heating(10);
    }
    assertClear(rule, readings(run.free(Channel.WATER_IN).pool(25.5).heating(90).recording()));
  }

  /** A probe that thaws and later slips has slipped. */
  @Test
  void aProbeThatSlipsAfterAStandstillHasSlipped() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .air(15)
            .noise(Channel.WATER_IN, 0.05)
            .noise(Channel.POWER, 10)
            .resolution(Channel.WATER_IN, 0.01)
            .circulating(10)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> 26)
            .heating(40)
            .free(Channel.WATER_IN)
            .heating(60)
            .change(Channel.WATER_IN, (atS, cel) -> cel - 5)
            .heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .startsWith("water-in went from 26.0 °C to 21.0 °C");
  }

  private static RunBuilder atRest() {
    return RunBuilder.run()
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
        .every(5)
        .air(14)
        .circulating(10)
        .heating(40)
        .circulating(20);
  }

  /** From 70 min on; the inlet still says the pool's 26 Cel. */
  @Test
  void anOutletThatFallsToTheAirWithinMinutesAtRestHasSlipped() {
    RunBuilder run = atRest().change(Channel.WATER_OUT, towardsWithin(4200, 240, 14));
    assertThat(onlyFlag(rule, readings(run.circulating(150).recording())).evidence())
        .isEqualTo(
            "water-out went from 26.0 °C to 14.0 °C, towards the air at 14.0 °C, within 20 min at"
                + " rest, while water-in moved by 0.0 K in over an hour; no pipe full of water cools"
                + " so");
  }

  /** The pump stops: a pipe full of water needs an hour, and both go. */
  @Test
  void pipesThatCoolTogetherAfterThePumpAreClear() {
    RunBuilder run =
        atRest()
            .change(Channel.WATER_OUT, towardsWithin(4200, 3600, 14))
            .change(Channel.WATER_IN, towardsWithin(4200, 5400, 14));
    assertClear(rule, readings(run.circulating(150).recording()));
  }

  /** Exponentially from a second on. */
  private static RunBuilder.Change towardsWithin(double fromS, double constantS, double airCel) {
    return (atS, cel) ->
        atS < fromS ? cel : airCel + (cel - airCel) * Math.exp((fromS - atS) / constantS);
  }
}
