package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

class FallingFlowTest {
  private final FallingFlow rule = new FallingFlow();

  /** Six hours of running water sampled every ten seconds, with a flow meter in the main line. */
  private static RunBuilder evening(RunBuilder.Change flow) {
    return RunBuilder.run()
        .every(10)
        .with(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER)
        .noise(Channel.FLOW_TOTAL, 4)
        .noise(Channel.PRESSURE_FILTER, 1)
        .change(Channel.FLOW_TOTAL, flow)
        .off(5)
        .circulating(5)
        .heating(350)
        .circulating(5);
  }

  private static double share(double atS) {
    return atS / (365 * 60);
  }

  @Test
  void saysFromWhereToWhere() {
    var flag =
        onlyFlag(
            rule,
            readings(
                RunBuilder.run()
                    .every(10)
                    .with(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER)
                    .change(Channel.FLOW_TOTAL, (s, v) -> v * (1 - 0.2 * share(s)))
                    .change(Channel.PRESSURE_FILTER, (s, v) -> v * (1 + 0.3 * share(s)))
                    .off(5)
                    .circulating(5)
                    .heating(350)
                    .recording()));
    assertThat(flag.evidence())
        .matches(
            "Flow fell from 24\\d L/min to 20\\d L/min \\(−1\\d %\\) in 5\\.\\d h, filter pressure"
                + " climbed from 8\\d kPa to 10\\d kPa");
    assertThat(flag.side()).isEqualTo(Side.WATER);
  }

  @Test
  void isSilentOnSteadyFlow() {
    assertClear(rule, readings(evening((s, v) -> v).recording()));
  }

  @Test
  void isSilentBelowTheLimitAndSpeaksAbove() {
    assertClear(rule, readings(evening((s, v) -> v * (1 - 0.07 * share(s))).recording()));
    onlyFlag(rule, readings(evening((s, v) -> v * (1 - 0.11 * share(s))).recording()));
  }

  @Test
  void isSilentOnAValveTurnedOnce() {
    assertClear(rule, readings(evening((s, v) -> share(s) > 0.5 ? 0.8 * v : v).recording()));
  }

  @Test
  void isSilentOnAPumpThatChangesSpeedBackAndForth() {
    assertClear(
        rule, readings(evening((s, v) -> v * (((long) s / 3600) % 2 == 0 ? 1 : 0.7)).recording()));
  }

  @Test
  void hearsTheFilterGaugeAlone() {
    var flag =
        onlyFlag(
            rule,
            readings(
                RunBuilder.run()
                    .every(10)
                    .without(Channel.FLOW_HEATER)
                    .with(Channel.PRESSURE_FILTER)
                    .change(Channel.PRESSURE_FILTER, (s, v) -> v * (1 + 0.3 * share(s)))
                    .off(5)
                    .circulating(5)
                    .heating(350)
                    .recording()));
    assertThat(flag.evidence()).startsWith("Filter pressure climbed from 8");
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run().without(Channel.FLOW_HEATER).off(5).heating(60).recording())))
        .isEqualTo("no flow-total, flow-heater or pressure-filter over two hours of running water");
  }
}
