package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * Water comes to stand in a heater of 16 kW that holds 10 L, so that it warms by 16 / (10 x 4.18) =
 * 0.4 K/s, and nothing but two temperatures and the power is read.
 */
class HotWaterTest {
  private final NoFlow rule = new NoFlow();

  private static RunBuilder night() {
    return RunBuilder.run()
        .every(5)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_AMBIENT)
        .circulating(10)
        .heating(60);
  }

  private static RunBuilder dry(RunBuilder run) {
    return run.heatingAt(Channel.WATER_OUT, 35).heating(3).heatingAt(Channel.WATER_OUT, 1.6);
  }

  @Test
  void aRiseOfTensOfKelvinsIsStandingWater() {
    Flag flag = onlyFlag(rule, readings(dry(night()).circulating(20).recording()));
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.evidence())
        .startsWith("Water stood in the heater while its compressor ran: water-out rose to 34.")
        .contains(" K above water-in, for 3 min");
  }

  /**
   * A protection trips and resets again and again, and the hot water stands between: that is no
   * zero of the pair, and no heat of the pool's. The sound hour before keeps its own.
   */
  @Test
  void whatStandsHotBetweenTheTripsIsNeitherZeroNorHeat() {
    RunBuilder run = night();
    for (int i = 0; i < 5; i++) {
      run.set(Channel.WATER_OUT, 58).heating(4).set(Channel.WATER_OUT, 54).circulating(10);
    }
    Findings stood = Analysis.of(run.recording());
    assertThat(stood.flags())
        .extracting(Flag::rule)
        .contains("no-flow")
        .doesNotContain("probes-swapped", "probe-offset");
    Findings sound = Analysis.of(night().recording());
    double heatJ = sound.heat().deliveredJ().orElseThrow().value();
    assertThat(stood.heat().deliveredJ().orElseThrow().value())
        .isCloseTo(heatJ, withinPercentage(10));
  }

  @Test
  void eachTimeIsCounted() {
    RunBuilder run = dry(dry(night()).circulating(20)).circulating(20);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence()).contains("(2 times");
  }

  /** A trickle of a sixth of the usual flow warms its water six times as much, and flows. */
  @Test
  void aLargeRiseOfFlowingWaterIsNotStandingWater() {
    assertClear(
        rule,
        readings(night().heatingAt(Channel.WATER_OUT, 12).heating(60).circulating(10).recording()));
  }

  /** Warm water in a pipe in the sun comes through when the pump starts. */
  @Test
  void hotWaterWithoutACompressorIsNot() {
    RunBuilder run = night().circulating(5).set(Channel.WATER_OUT, 55).circulating(5);
    assertClear(rule, readings(run.free(Channel.WATER_OUT).circulating(20).recording()));
  }

  /** A clip that has come off reads the air of a desert evening. */
  @Test
  void aProbeInHotAirIsNot() {
    RunBuilder run =
        night().air(47).heating(30).change(Channel.WATER_OUT, (s, k) -> 47).heating(30);
    assertClear(rule, readings(run.circulating(10).recording()));
  }

  /** Where the heater's own meter shows the water, the probe is at fault. */
  @Test
  void aMeterInTheHeatersBranchKnowsBetter() {
    assertClear(
        rule,
        readings(dry(night().with(Channel.FLOW_HEATER).heating(10)).circulating(20).recording()));
  }
}
