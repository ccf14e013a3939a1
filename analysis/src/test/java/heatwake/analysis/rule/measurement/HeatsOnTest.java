package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * A dead flow meter, and water that truly stands. A heater without water trips within a minute or
 * two (common practice).
 */
class HeatsOnTest {
  private final ProbeStuck rule = new ProbeStuck();

  private static RunBuilder dead(Channel meter) {
    return RunBuilder.run()
        .with(Channel.FLOW_TOTAL, Channel.WATER_RETURN)
        .noise(Channel.WATER_IN, 0.02)
        .noise(Channel.WATER_OUT, 0.02)
        .noise(Channel.FLOW_TOTAL, 1)
        .noise(Channel.FLOW_HEATER, 1)
        .change(meter, (atS, value) -> 0);
  }

  @Test
  void theHeatersMeterReadsNothingThoughTheHeaterHeats() {
    RunBuilder run = dead(Channel.FLOW_HEATER).off(5).circulating(10).heating(60);
    Flag flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.FLOW_HEATER);
    assertThat(flag.evidence())
        .startsWith("flow-heater stood at 0.0 L/min for 75 min")
        .endsWith(
            "the heater warmed the water by 1.6 K for 55 min meanwhile, which none does without"
                + " water, and flow-total and pump-on saw it move");
    assertThat(flag.nextCheck()).contains("flow meter");
  }

  /** 250 L/min of which 0.6 mix as heated (by hand): 150 L/min, 1.6 K, an hour: 16.7 kWh. */
  @Test
  void theHeatIsThenOfTheWholeFlowAndTheMixing() {
    Findings findings =
        Analysis.of(dead(Channel.FLOW_HEATER).off(5).circulating(10).heating(60).recording());
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(16.7, offset(1.2));
    assertThat(findings.verdict().side()).isEqualTo(Side.MEASUREMENT);
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("probe-stuck");
  }

  @Test
  void thePumpsMeterReadsNothingThoughTheHeaterHeats() {
    RunBuilder run = dead(Channel.FLOW_TOTAL).off(5).circulating(10).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.FLOW_TOTAL);
  }

  @Test
  void waterThatStandsIsNoDeadMeter() {
    // The pump rests.
    assertClear(rule, readings(RunBuilder.run().noise(Channel.AIR_IN, 0.1).off(120).recording()));
    // A compressor that runs dry for some minutes.
    assertClear(
        rule, readings(dead(Channel.FLOW_HEATER).off(5).circulating(10).heating(12).recording()));
    // No rise, as without compression.
    assertClear(
        rule,
        readings(
            dead(Channel.FLOW_HEATER)
                .heatingAt(Channel.WATER_OUT, 0)
                .circulating(10)
                .heating(60)
                .recording()));
    // The flow switch says so too.
    assertClear(
        rule,
        readings(
            dead(Channel.FLOW_HEATER)
                .change(Channel.FLOW_SWITCH, (atS, value) -> 0)
                .circulating(10)
                .heating(60)
                .recording()));
  }

  /** 1 kW into 5 L of standing water: 3 K a minute (by hand), no rise that holds. */
  @Test
  void aRiseThatGrowsIsStandingWater() {
    assertClear(
        rule,
        readings(
            dead(Channel.FLOW_HEATER)
                .change(Channel.WATER_OUT, (atS, value) -> 26 + Math.max(0, atS - 900) / 100)
                .circulating(15)
                .heating(40)
                .recording()));
  }
}
