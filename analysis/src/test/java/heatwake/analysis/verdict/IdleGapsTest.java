package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Probes that were clipped on an hour late, or failed for most of a run. */
class IdleGapsTest {
  private static Findings silent(Channel channel, double minutes) {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .with(Channel.AIR_IN, channel)
            .circulating(20)
            .heating(10)
            .silent(channel)
            .heating(minutes)
            .free(channel);
    return Analysis.of(run.heating(110 - minutes).circulating(20).recording());
  }

  @ParameterizedTest
  @EnumSource(names = {"WIND_SPEED", "AIR_IN", "TEMP_LIQUID", "WATER_OUT"})
  void aGapThatLeavesTheVerdictItsGroundsIsOnlyTold(Channel channel) {
    Findings findings = silent(channel, 40);
    assertThat(findings.flags()).extracting(Flag::rule).contains("data-gap");
    assertThat(findings.verdict().side()).isNotEqualTo(Side.MEASUREMENT);
  }

  @Test
  void whatTellsOfTheSiteAloneMayBeSilentForLong() {
    assertThat(silent(Channel.WIND_SPEED, 105).verdict().side()).isNotEqualTo(Side.MEASUREMENT);
  }

  /** What the heater did meanwhile nobody knows. */
  @Test
  void aGapInWhichNothingWasReadIsMendedFirst() {
    RunBuilder run =
        RunBuilder.run()
            .every(10)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .circulating(20)
            .heating(30)
            .nothingRecorded(40)
            .heating(60);
    assertThat(Analysis.of(run.recording()).verdict().side()).isEqualTo(Side.MEASUREMENT);
  }

  @Test
  void aGapThatTakesThemAwayIsMendedFirst() {
    assertThat(silent(Channel.WATER_OUT, 105).verdict().side()).isEqualTo(Side.MEASUREMENT);
  }
}
