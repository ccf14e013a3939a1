package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
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
}
