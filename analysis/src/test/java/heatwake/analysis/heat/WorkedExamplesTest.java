package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

/** The worked examples of docs/method-heat.md, put through the whole analysis. */
class WorkedExamplesTest {
  /** 45 US gallons a minute. */
  private static final double FLOW_L_PER_MIN = 170.3435303;

  /**
   * Example 1. An independent calculation with IF97 at 0.3 MPa (k = 4.165768 MJ/(m3 K), meter in
   * the cold pipe; flow 1 %, probes 0.10 K each and not correlated, k 0.1 %, power 1 % of 6 kW)
   * gives 35.48058 kW with u = 1.7108 kW, COP 5.9134 with u = 0.2912.
   */
  @Test
  void heatAndCopWithoutAZero() {
    Findings findings = Analysis.of(run().off(10).heating(90).off(10).recording());
    SteadySpan span = findings.steady().get(0);
    Estimate heat = span.heatW().orElseThrow();
    // Our pressure is 0.17 MPa: k is 0.005 % higher. The rise of the written run comes up with a
    // time constant of 30 s, of which the span's first minutes still hold a little: 0.05 %.
    assertThat(heat.value()).isCloseTo(35_480.58, within(0.001 * 35_480));
    assertThat(heat.standard()).isCloseTo(1710.8, within(4.0));
    Estimate cop = span.cop().orElseThrow();
    assertThat(cop.value()).isCloseTo(5.9134, within(0.004));
    assertThat(cop.standard()).isCloseTo(0.2912, within(0.001));
  }

  /**
   * Example 2. The same with a zero: of the pair's 0.1414 K a tenth stays, with 0.005 K at rest and
   * 0.5 % of the rise: u(rise) = 0.0213 K, 0.71 %; with flow 1 % and properties 0.1 % u(heat) =
   * 1.23 %, 0.436 kW.
   */
  @Test
  void heatWithAZero() {
    Findings findings =
        Analysis.of(
            run()
                .change(Channel.WATER_OUT, (atS, value) -> value + 0.12)
                .circulating(20)
                .heating(90)
                .circulating(20)
                .recording());
    assertThat(findings.heat().zeroOffsetK().orElseThrow().value()).isCloseTo(0.12, within(0.005));
    Estimate heat = findings.steady().get(0).heatW().orElseThrow();
    assertThat(heat.value()).isCloseTo(35_480.58, within(0.002 * 35_480));
    assertThat(heat.standard()).isCloseTo(436, within(6.0));
  }

  /**
   * Example 3. Bypass: 200 L/min in all, in 27.0, out 30.0, return 28.8 Cel: 60 % goes through the
   * heater, 120 L/min, so 25.0 kW. The nameplate promises 16.5 kW at 27 Cel and 80 %: at its 200
   * L/min that is a rise of 1.19 K, at its 90 L/min 2.64 K.
   */
  @Test
  void shareAndRangeOfTheBypass() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .pool(27)
                .air(27)
                .without(Channel.FLOW_HEATER)
                .with(Channel.FLOW_TOTAL, Channel.WATER_RETURN, Channel.HUMIDITY_IN)
                .set(Channel.HUMIDITY_IN, 80)
                .heatingAt(Channel.WATER_OUT, 3)
                .heatingAt(Channel.FLOW_TOTAL, 200)
                .circulating(20)
                .heating(60)
                .recording());
    SteadySpan span = findings.steady().get(0);
    assertThat(span.heaterShare().orElseThrow().value()).isCloseTo(0.6, within(0.002));
    assertThat(span.flowM3PerS().orElseThrow().value() * 60e3).isCloseTo(120, within(0.5));
    assertThat(span.heatW().orElseThrow().value()).isCloseTo(25_000, within(50.0));
    BypassFigures bypass = findings.bypass().orElseThrow();
    assertThat(bypass.expectedHeatW().orElseThrow().value()).isCloseTo(16_500, within(120.0));
    assertThat(bypass.flowM3PerS().orElseThrow().value() * 60e3).isCloseTo(120, within(0.5));
    assertThat(bypass.riseAtFlowMaxK().orElseThrow().value()).isCloseTo(1.19, within(0.02));
    assertThat(bypass.riseAtFlowMinK().orElseThrow().value()).isCloseTo(2.64, within(0.03));
  }

  private static RunBuilder run() {
    Rig rig = Rigs.bare();
    rig = Rigs.withProbe(rig, Channel.FLOW_HEATER, new ReadingUncertainty.Relative(0.01));
    return RunBuilder.run()
        .rig(rig)
        .pool(27)
        .heatingAt(Channel.WATER_OUT, 3)
        .heatingAt(Channel.FLOW_HEATER, FLOW_L_PER_MIN)
        .heatingAt(Channel.POWER, 6000)
        .without(Channel.CURRENT);
  }
}
