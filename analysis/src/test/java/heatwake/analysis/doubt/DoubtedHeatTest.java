package heatwake.analysis.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Heat of runs in which a probe fails. The truth is the heat of {@link RunBuilder}: 150 L/min and
 * 1.6 K with a heat coefficient of 4.167 MJ/(m3 K) (IF97 at 0.17 MPa, 26 and 27.6 Cel): 16.67 kW.
 */
class DoubtedHeatTest {
  private static final double TRUE_W = 16_670;

  /** Noise keeps a probe from standing still honestly. */
  private static RunBuilder night() {
    return RunBuilder.run()
        .air(15)
        .noise(Channel.WATER_IN, 0.02)
        .noise(Channel.WATER_OUT, 0.02)
        .noise(Channel.FLOW_HEATER, 1)
        .circulating(15);
  }

  /** From a time on the probe goes to the air, by a share of the way, within so many minutes. */
  private static RunBuilder.Change slips(double fromMin, double withinMin, double share) {
    return (atS, cel) ->
        cel + share * Math.min(1, Math.max(0, (atS / 60 - fromMin) / withinMin)) * (15 - cel);
  }

  private static List<String> rules(Findings findings) {
    return findings.flags().stream().map(flag -> flag.rule()).toList();
  }

  private static void assertHoldsTheTruth(Estimate heatW) {
    assertThat(Math.abs(heatW.value() - TRUE_W)).isLessThan(heatW.expanded());
  }

  @Test
  void afterAnOutletSlippedOffNoHeatIsGiven() {
    Findings findings =
        Analysis.of(night().change(Channel.WATER_OUT, slips(255, 5, 0.3)).heating(360).recording());
    assertThat(rules(findings)).contains("probe-slipped");
    // Two thirds of the heater's time lie before the slip: 4 h of 16.67 kW.
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(4 * 16.67, within(2.5));
    assertThat(findings.heat().cop().orElseThrow().value()).isCloseTo(16.67 / 2.7, within(0.1));
    assertThat(findings.missing())
        .anyMatch(
            sentence ->
                sentence.startsWith("heat and COP: water-out was off its pipe from ")
                    && sentence.endsWith(
                        " UTC, so that time is left out; see that the clip sits tight"));
    for (SteadySpan span : findings.steady()) {
      span.heatW().ifPresent(DoubtedHeatTest::assertHoldsTheTruth);
    }
    assertThat(findings.steady()).anyMatch(span -> span.heatW().isPresent());
  }

  @Test
  void aProbeThatSlipsEarlyLeavesNoTotal() {
    Findings findings =
        Analysis.of(night().change(Channel.WATER_OUT, slips(105, 5, 0.3)).heating(360).recording());
    assertThat(findings.heat().deliveredJ()).isEmpty();
    assertThat(findings.heat().cop()).isEmpty();
    assertThat(findings.heat().electricJ()).isPresent();
    assertThat(findings.missing())
        .anyMatch(sentence -> sentence.startsWith("delivered heat and COP: less than half"));
  }

  @Test
  void aProbeThatSlipsSlowlyIsLeftOutFromWhereItBegan() {
    // 3.3 K in three hours, 1.1 K/h: the rise of 1.6 K is wrong by a third half an hour after.
    Findings findings =
        Analysis.of(
            night().change(Channel.WATER_OUT, slips(195, 180, 0.3)).heating(360).recording());
    assertThat(rules(findings)).contains("probe-slipped");
    findings.heat().deliveredJ().ifPresent(heat -> assertThat(heat.value()).isLessThan(4 * 6e7));
    assertThat(findings.steady()).anyMatch(span -> span.heatW().isPresent());
    for (SteadySpan span : findings.steady()) {
      span.heatW().ifPresent(DoubtedHeatTest::assertHoldsTheTruth);
    }
  }

  @Test
  void aFlowThatStandsStillIsLeftOutForAsLong() {
    double stuckM3PerS = 40;
    Findings findings =
        Analysis.of(
            night()
                .heating(120)
                .set(Channel.FLOW_HEATER, stuckM3PerS)
                .noise(Channel.FLOW_HEATER, 0)
                .heating(60)
                .free(Channel.FLOW_HEATER)
                .noise(Channel.FLOW_HEATER, 1)
                .heating(120)
                .recording());
    assertThat(rules(findings)).contains("probe-stuck");
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(4 * 16.67, within(1.0));
    assertThat(findings.missing())
        .anyMatch(
            sentence ->
                sentence.startsWith("heat and COP: flow-heater stood still from ")
                    && sentence.endsWith(
                        " UTC, so that time is left out; mend or change the probe and record"
                            + " again"));
  }

  /**
   * The meter hangs from two and a half hours on, through the pump's stop. All else that tells of
   * the water says for itself that the pump stopped under a heater that heated.
   */
  @Test
  void aFlowThatReadsOnThroughStillWaterLeavesTheRestItsHeat() {
    Findings findings =
        Analysis.of(
            night()
                .with(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER)
                .noise(Channel.FLOW_HEATER, 0)
                .heating(150)
                .change(Channel.FLOW_HEATER, (atS, flow) -> 149.5)
                .heating(60)
                .off(180)
                .recording());
    assertThat(rules(findings)).contains("probe-stuck", "pump-hours");
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2.5 * 16.67, within(0.7));
    assertThat(findings.missing())
        .anyMatch(
            sentence ->
                sentence.startsWith("heat and COP: flow-heater stood still from 2031-05-04 20:45"));
  }

  @Test
  void aStuckProbeThatHeatDoesNotUseLeavesItAlone() {
    Findings findings =
        Analysis.of(
            night()
                .noise(Channel.PRESSURE_SUCTION, 5)
                .heating(60)
                .set(Channel.PRESSURE_SUCTION, 500)
                .noise(Channel.PRESSURE_SUCTION, 0)
                .heating(60)
                .recording());
    assertThat(rules(findings)).contains("probe-stuck");
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2 * 16.67, within(0.5));
    assertThat(findings.missing())
        .anyMatch(sentence -> sentence.startsWith("figures that rest on pressure-suction: "))
        .noneMatch(sentence -> sentence.startsWith("heat and COP"));
  }

  @Test
  void soundProbesAreNotDoubted() {
    Findings findings = Analysis.of(night().heating(120).recording());
    assertThat(findings.missing()).noneMatch(sentence -> sentence.startsWith("heat and COP"));
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2 * 16.67, within(0.5));
  }
}
