package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.quantity.Channel;
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

  /** Heat and cop of the known part stay in proportion; a part under half is no heat of a cycle. */
  @Test
  void aCycleSaysInWhichPartItsHeatIsKnown() {
    RunBuilder run = RunBuilder.run().circulating(20).heating(60);
    run.silent(Channel.WATER_OUT).heating(20).free(Channel.WATER_OUT).heating(20);
    CycleFigures partly = Analysis.of(run.circulating(20).recording()).cycles().get(0);

    assertThat(partly.deliveredKnown()).isCloseTo(83 / 103.0, within(0.01));
    assertThat(partly.deliveredJ().orElseThrow().value())
        .isCloseTo(
            partly.cop().orElseThrow().value()
                * partly.electricJ().orElseThrow().value()
                * partly.deliveredKnown(),
            withinPercentage(2));

    run = RunBuilder.run().circulating(20).heating(30);
    run.silent(Channel.WATER_OUT).heating(60).free(Channel.WATER_OUT).heating(10);
    CycleFigures mostlyUnknown = Analysis.of(run.circulating(20).recording()).cycles().get(0);

    assertThat(mostlyUnknown.deliveredKnown()).isLessThan(0.5);
    assertThat(mostlyUnknown.deliveredJ()).isEmpty();
    assertThat(mostlyUnknown.cop()).isEmpty();
    assertThat(mostlyUnknown.electricJ()).isPresent();
  }
}
