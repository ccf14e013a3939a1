package heatwake.analysis.rule.airflow;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** Air stands at 24 Cel. */
class AirRecirculationTest {
  private final AirRecirculation rule = new AirRecirculation();

  private static RunBuilder inletBelowBy(double kelvin) {
    return RunBuilder.run().off(20).circulating(15).set(Channel.AIR_IN, 24 - kelvin).heating(60);
  }

  @Test
  void saysHowFarWhileRunningAndAtRest() {
    var flag = onlyFlag(rule, readings(inletBelowBy(4).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "The coil draws in air of 20.0 °C, 4.0 K below outdoor air while running, 0.0 K below it"
                + " at rest");
    assertThat(flag.side()).isEqualTo(Side.AIRFLOW);
  }

  @Test
  void isSilentBelowTheLimitAndSpeaksAbove() {
    assertClear(rule, readings(inletBelowBy(0).recording()));
    assertClear(rule, readings(inletBelowBy(2).recording()));
    onlyFlag(rule, readings(inletBelowBy(2.2).recording()));
  }

  @Test
  void aDifferenceThatIsThereAtRestTooIsTheProbes() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .set(Channel.AIR_IN, 20)
                .off(20)
                .circulating(15)
                .heating(60)
                .recording()));
  }

  /** Three standard uncertainties of 1 K are 3 K (by hand). */
  @Test
  void aRestOfAMinuteOrTwoTellsMoreRoughly() {
    onlyFlag(rule, readings(afterShortRest(2, 3.3).heating(60).recording()));
    assertClear(rule, readings(afterShortRest(2, 2.7).heating(60).recording()));
    assertClear(rule, readings(afterShortRest(0.7, 3.3).heating(60).recording()));
    // Of slow probes three readings make a mean, two do not.
    onlyFlag(rule, readings(slowlyAfterShortRest(4).heating(60).recording()));
    assertClear(rule, readings(slowlyAfterShortRest(2).heating(60).recording()));
    // What comes only after an hour is the sun on the outdoor probe.
    assertClear(
        rule,
        readings(
            afterShortRest(2, 0).heating(60).set(Channel.AIR_IN, 19).heating(240).recording()));
  }

  /** Of some seconds three times 1.5 K (by hand), where probes clipped on just now are settling. */
  @Test
  void aGlanceAtTheRestTellsStillMoreRoughly() {
    onlyFlag(rule, readings(afterShortRest(0.5, 4.8).heating(60).recording()));
    assertClear(rule, readings(afterShortRest(0.5, 4.2).heating(60).recording()));
    // Both come from a warm place; the outdoor probe, in still air, takes five times as long.
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .change(Channel.AIR_IN, (s, v) -> v + 8 * Math.exp(-s / 120))
                .change(Channel.AIR_AMBIENT, (s, v) -> v + 8 * Math.exp(-s / 600))
                .circulating(0.5)
                .heating(90)
                .recording()));
  }

  private static RunBuilder slowlyAfterShortRest(double minutes) {
    return RunBuilder.run().every(60).circulating(minutes).set(Channel.AIR_IN, 20);
  }

  private static RunBuilder afterShortRest(double minutes, double kelvin) {
    return RunBuilder.run().circulating(minutes).set(Channel.AIR_IN, 24 - kelvin);
  }

  @Test
  void withoutRestNeedsMore() {
    assertClear(rule, readings(RunBuilder.run().set(Channel.AIR_IN, 20).heating(60).recording()));
    assertThat(
            onlyFlag(
                    rule,
                    readings(RunBuilder.run().set(Channel.AIR_IN, 17).heating(60).recording()))
                .evidence())
        .isEqualTo(
            "The coil draws in air of 17.0 °C, 7.0 K below outdoor air while running; no rest to"
                + " compare");
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run().without(Channel.AIR_AMBIENT).off(5).heating(60).recording())))
        .isEqualTo("no air-in and air-ambient to compare");
    assertThat(reason(rule, readings(RunBuilder.run().off(5).circulating(30).recording())))
        .isEqualTo("the heater did not run for a quarter of an hour on end");
  }
}
