package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** Conservation: what the cycles gave and took adds up to what the run did. */
class CycleSumsTest {
  @Test
  void cyclesAddUpToTheRun() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .circulating(20)
                .heating(60)
                .circulating(20)
                .heating(40)
                .circulating(20)
                .recording());

    assertThat(findings.cycles()).hasSize(2);
    double delivered =
        findings.cycles().stream().mapToDouble(one -> one.deliveredJ().orElseThrow().value()).sum();
    double electric =
        findings.cycles().stream().mapToDouble(one -> one.electricJ().orElseThrow().value()).sum();
    assertThat(delivered)
        .isCloseTo(findings.heat().deliveredJ().orElseThrow().value(), within(1.0));
    assertThat(electric).isCloseTo(findings.heat().electricJ().orElseThrow().value(), within(1.0));
  }

  @Test
  void copOfACycleIsItsHeatOverItsEnergy() {
    Findings findings =
        Analysis.of(RunBuilder.run().circulating(20).heating(60).circulating(20).recording());

    CycleFigures only = findings.cycles().get(0);
    assertThat(only.cop().orElseThrow().value())
        .isCloseTo(
            only.deliveredJ().orElseThrow().value() / only.electricJ().orElseThrow().value(),
            within(1e-6));
  }
}
