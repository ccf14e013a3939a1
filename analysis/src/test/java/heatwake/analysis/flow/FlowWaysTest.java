package heatwake.analysis.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.PumpPoint;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * The same machine seen through fewer and fewer probes: 150 of 250 L/min through the heater, 1.6 K
 * rise, so 16.67 kWh in an hour.
 */
class FlowWaysTest {
  private static final double TRUE_KWH = 16.67;

  @Test
  void measuredFlowIsBest() {
    Findings findings = hour(run -> run.with(Channel.FLOW_TOTAL));
    assertThat(findings.heat().flowWay()).contains("measured by flow-heater");
    assertCovers(findings, 0.06);
    assertThat(share(findings).value()).isCloseTo(0.6, within(0.001));
  }

  @Test
  void mixingBalanceGivesTheSameHeat() {
    Findings findings =
        hour(
            run -> run.without(Channel.FLOW_HEATER).with(Channel.FLOW_TOTAL, Channel.WATER_RETURN));
    assertThat(findings.heat().flowWay().orElseThrow()).contains("mixing balance");
    assertCovers(findings, 0.06);
    assertThat(share(findings).value()).isCloseTo(0.6, within(0.003));
    SteadySpan span = findings.steady().get(0);
    assertThat(span.flowM3PerS().orElseThrow().value() * 60e3).isCloseTo(150, within(1.0));
  }

  @Test
  void filterPressureAndPumpCurveStandInForAMeter() {
    Rig rig = Rigs.typical();
    // 80 kPa at the filter and 10 kPa of suction: 90 kPa of head, 250 L/min on this curve.
    Rig withCurve =
        new Rig(
            rig.site(),
            rig.pool(),
            rig.tariff(),
            List.of(
                new PumpPoint(150e-3 / 60, 130e3),
                new PumpPoint(250e-3 / 60, 90e3),
                new PumpPoint(300e-3 / 60, 60e3)),
            rig.heater(),
            rig.probes());
    Findings findings =
        hour(
            run ->
                run.rig(withCurve)
                    .without(Channel.FLOW_HEATER)
                    .with(Channel.PRESSURE_FILTER, Channel.WATER_RETURN));
    assertThat(findings.heat().flowWay().orElseThrow()).contains("pump curve");
    assertCovers(findings, 0.4);
  }

  /** No bypass: the pump gives the heater 150 L/min, more than its plate asks for at most. */
  @Test
  void aTotalThatAllGoesThroughTheHeaterIsHeldTo() {
    Heater typical = Rigs.typicalHeater();
    Heater narrow =
        new Heater(
            typical.label(),
            typical.refrigerant(),
            OptionalDouble.of(60e-3 / 60),
            OptionalDouble.of(110e-3 / 60),
            typical.voltageV(),
            typical.currentMaxA(),
            typical.breakerA(),
            typical.restartDelayS(),
            typical.pressureMaxPa(),
            typical.speed(),
            typical.ratings());
    Findings findings =
        hour(
            run ->
                run.rig(Rigs.withHeater(narrow))
                    .without(Channel.FLOW_HEATER)
                    .with(Channel.FLOW_TOTAL)
                    .heatingAt(Channel.FLOW_TOTAL, 150));
    assertThat(findings.heat().flowWay().orElseThrow()).contains("a likely part of flow-total");
    assertCovers(findings, 0.7);
  }

  @Test
  void nameplateIsWideButHolds() {
    Findings findings = hour(run -> run.without(Channel.FLOW_HEATER));
    assertThat(findings.heat().flowWay().orElseThrow()).contains("nameplate");
    assertCovers(findings, 0.6);
  }

  /**
   * 45 L/min at a rise of 5.3 K is 16.6 kW, all that the nameplate promises; half way between
   * flow-min and flow-max it would be 53 kW.
   */
  @Test
  void aRiseThatFlowMinDoesNotExplainTakesTheNameplatesHeat() {
    Findings findings =
        hour(run -> run.without(Channel.FLOW_HEATER).heatingAt(Channel.WATER_OUT, 5.3));
    assertThat(findings.heat().flowWay().orElseThrow())
        .isEqualTo(
            "taken from the rise and half to all of the heat that the nameplate lets expect");
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    assertThat(Math.abs(delivered.value() / 3.6e6 - 16.6)).isLessThan(delivered.expanded() / 3.6e6);
    assertThat(findings.flags()).extracting(Flag::rule).contains("low-heater-flow");
  }

  @Test
  void anAssumedFlowIsGivenOutNeitherAsFlowNorAsRatio() {
    Findings findings = hour(run -> run.without(Channel.FLOW_HEATER));
    SteadySpan span = findings.steady().get(0);
    assertThat(span.flowM3PerS()).isEmpty();
    assertThat(span.ratio()).isEmpty();
    assertThat(findings.traces()).extracting(Trace::kind).doesNotContain(Trace.Kind.HEATER_FLOW);
  }

  @Test
  void noHeatIsCreditedWhileThePumpIsOff() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .without(Channel.FLOW_HEATER, Channel.FLOW_SWITCH)
                .off(5)
                .circulating(10)
                .heating(60)
                .set(Channel.PUMP_ON, 0)
                .heatingAt(Channel.WATER_OUT, 8)
                .heating(60)
                .off(10)
                .recording());
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    assertThat(delivered.value() / 3.6e6).isCloseTo(TRUE_KWH, within(delivered.expanded() / 3.6e6));
  }

  @Test
  void turningTheBypassShowsWithinAMinute() {
    RunBuilder run =
        RunBuilder.run()
            .without(Channel.FLOW_HEATER)
            .with(Channel.FLOW_TOTAL, Channel.WATER_RETURN)
            .noise(Channel.WATER_IN, 0.02)
            .noise(Channel.WATER_OUT, 0.02)
            .noise(Channel.WATER_RETURN, 0.02)
            .heatingAt(Channel.WATER_OUT, 2.0)
            .circulating(10)
            .heating(30);
    long turned = run.nowMs();
    // Half the flow doubles the rise; the mixture stays as warm.
    run.heatingAt(Channel.WATER_OUT, 4.0)
        .change(Channel.WATER_RETURN, (atS, value) -> 26 + 0.3 * 4.0)
        .change(Channel.WATER_OUT, (atS, value) -> 26 + 4.0)
        .heating(10);
    Findings findings = Analysis.of(run.recording());
    Trace share =
        findings.traces().stream()
            .filter(trace -> trace.kind() == Trace.Kind.HEATER_SHARE)
            .findFirst()
            .orElseThrow();
    int at = (int) ((turned - share.startMs()) / share.stepMs());
    assertThat(share.values()[at - 60]).isCloseTo(0.6, within(0.03));
    assertThat(Arrays.stream(share.values(), at + 45, at + 600).max().orElseThrow())
        .isCloseTo(0.3, within(0.03));
  }

  private static Findings hour(UnaryOperator<RunBuilder> clipping) {
    return Analysis.of(
        clipping
            .apply(RunBuilder.run())
            .off(5)
            .circulating(10)
            .heating(60)
            .circulating(10)
            .recording());
  }

  private static Estimate share(Findings findings) {
    return findings.steady().get(0).heaterShare().orElseThrow();
  }

  private static void assertCovers(Findings findings, double widest) {
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    assertThat(delivered.value() / 3.6e6).isCloseTo(TRUE_KWH, within(delivered.expanded() / 3.6e6));
    assertThat(delivered.expanded() / delivered.value()).isLessThan(widest);
  }
}
