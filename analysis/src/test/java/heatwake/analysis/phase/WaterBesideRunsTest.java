package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two thermometers and the power, of which the leaving water's reads 2 K too high. */
class WaterBesideRunsTest {
  private static final double OFFSET_K = 2;

  private static RunBuilder ran(double airCel) {
    return RunBuilder.run()
        .every(10)
        .air(airCel)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
        .resolution(Channel.WATER_IN, 0.1)
        .resolution(Channel.WATER_OUT, 0.1)
        .heatingAt(Channel.WATER_OUT, 2.6)
        .change(Channel.WATER_OUT, (atS, value) -> value + OFFSET_K)
        .off(30)
        .circulating(1)
        .fan(0.5)
        .heating(120);
  }

  /**
   * Water that has carried the heat away within minutes, and then keeps its temperatures, moves.
   */
  @Test
  void pipesThatKeepTheirTemperaturesAfterAStopCarryWater() {
    Findings findings = Analysis.of(ran(20).circulating(90).recording());
    assertThat(findings.zero().orElseThrow().offsetK().value()).isCloseTo(OFFSET_K, within(0.1));
    assertThat(findings.flags()).extracting(Flag::rule).contains("probe-offset");
  }

  /** Standing water falls on and on, in cold air and in air nearly as warm as the pool. */
  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 25, 27})
  void pipesThatCoolOnCarryNone(double airCel) {
    Findings findings = Analysis.of(ran(airCel).off(180).recording());
    assertThat(findings.zero()).isEmpty();
    assertThat(findings.flags()).extracting(Flag::rule).doesNotContain("probe-offset");
  }
}
