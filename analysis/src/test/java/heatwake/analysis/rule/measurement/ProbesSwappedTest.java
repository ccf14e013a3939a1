package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class ProbesSwappedTest {
  private final ProbesSwapped rule = new ProbesSwapped();

  /** Readings of both probes exchanged: the leaving water looks the colder one. */
  private static RunBuilder exchanged(double riseK) {
    return RunBuilder.run().heatingAt(Channel.WATER_OUT, -riseK);
  }

  @Test
  void saysThatThePoolAgreesWithTheWrongProbe() {
    RunBuilder run =
        exchanged(1.6)
            .set(Channel.WATER_POOL, 24.4)
            .off(5)
            .circulating(10)
            .heating(60)
            .circulating(5);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "water-out reads 1.6 K below water-in over 55 min of running; the pool agrees with"
                + " water-out, not with water-in");
  }

  @Test
  void aRiseWithinTheUncertaintyOfThePairIsClear() {
    assertClear(rule, readings(exchanged(0.45).circulating(10).heating(60).recording()));
    onlyFlag(rule, readings(exchanged(0.6).circulating(10).heating(60).recording()));
  }

  @Test
  void aHealthyHeaterIsClear() {
    assertClear(rule, readings(RunBuilder.run().circulating(10).heating(60).recording()));
  }

  @Test
  void aMachineThatCoolsThePoolIsClear() {
    assertClear(
        rule,
        readings(exchanged(2).set(Channel.AIR_OUT, 30).circulating(10).heating(60).recording()));
  }

  @Test
  void tenMinutesOfRunningAreNeeded() {
    assertClear(rule, readings(exchanged(2).circulating(10).heating(12).recording()));
  }

  @Test
  void needsAWitnessForTheCompressor() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER)
                        .heating(20)
                        .recording())))
        .isEqualTo("no power, current or pressure-discharge to tell that the compressor runs");
  }

  private static RunBuilder withoutDraw(double riseK) {
    return exchanged(riseK)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_TOTAL)
        .every(5)
        .circulating(20);
  }

  /** Exchanged, the leaving water's steps stand on water-in. */
  private static RunBuilder.Change stepsOnTheInlet(double riseK) {
    return (atS, cel) -> cel + (atS > 1200 && atS % 5400 > 1200 ? riseK : 0);
  }

  @Test
  void withoutDrawOrPressureStepsOfTheInletTell() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_TOTAL)
            .every(5)
            .change(Channel.WATER_IN, stepsOnTheInlet(2.4))
            .circulating(240);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .matches(
            "water-out reads 2\\.4 K below water-in over 3\\.\\d h of moving water, and \\d times it"
                + " was water-in that stepped by so much");
  }

  /** A machine that cools sends colder water on; what enters it is the pool. */
  @Test
  void withoutDrawAMachineThatCoolsIsNotAccused() {
    RunBuilder run = withoutDraw(2.4);
    for (int k = 0; k < 3; k++) {
      run.heating(70).circulating(20);
    }
    assertThat(reason(rule, readings(run.recording())))
        .isEqualTo("no power, current or pressure-discharge to tell that the compressor runs");
  }

  /** A clip in the cold air differs for hours, but it does not step. */
  @Test
  void withoutDrawAColdOutletThatNeverStepsIsNotAccused() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_TOTAL)
            .every(5)
            .circulating(20)
            .change(Channel.WATER_OUT, (atS, cel) -> cel - 2.4)
            .circulating(240);
    assertThat(rule.evaluate(readings(run.recording()))).isNotInstanceOf(Outcome.Flagged.class);
  }
}
