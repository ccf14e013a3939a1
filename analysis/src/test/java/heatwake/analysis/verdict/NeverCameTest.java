package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * A run in which nothing of the heater comes on: switched off, or failed. The set temperature is 28
 * Cel.
 */
class NeverCameTest {
  private static Verdict verdict(double poolCel, double hours) {
    return Analysis.of(
            RunBuilder.run().every(5).pool(poolCel).off(2).circulating(60 * hours).recording())
        .verdict();
  }

  @Test
  void saysThatColdWaterFlowedAndWhereToLook() {
    Verdict verdict = verdict(26, 6);
    assertThat(verdict.side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict.because())
        .containsExactly(
            "the compressor never ran in 6.0 h of flowing water, 2.0 K below the set temperature");
    assertThat(verdict.wouldDecide()).containsExactly(NeverCame.NEXT_CHECK);
  }

  @Test
  void aWarmPoolOrAShortLookSaysNothing() {
    assertThat(verdict(28.2, 6).because()).containsExactly("the compressor was not seen running");
    assertThat(verdict(26, 0.5).because()).containsExactly("the compressor was not seen running");
  }
}
