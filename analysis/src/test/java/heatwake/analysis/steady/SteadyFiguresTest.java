package heatwake.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.circuit.Condensate;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

class SteadyFiguresTest {
  @Test
  void refrigerantSideFollowsFromGaugePressures() {
    // R-410A dew: 2418.609 kPa absolute at 40 Cel and 1084.818 at 10 Cel (CoolProp 7.2.0, the
    // Lemmon 2003 equation); bubble at 40 Cel 2425.642, so 2418.609 is 39.88 Cel.
    SteadySpan span =
        Analysis.of(
                RunBuilder.run()
                    .heatingAt(Channel.PRESSURE_DISCHARGE, 2418.609 - 101.325)
                    .heatingAt(Channel.PRESSURE_SUCTION, 1084.818 - 101.325)
                    .heatingAt(Channel.TEMP_LIQUID, 35)
                    .heatingAt(Channel.TEMP_SUCTION, 16)
                    .circulating(10)
                    .heating(90)
                    .recording())
            .steady()
            .get(0);
    assertThat(span.condensingK().orElseThrow()).isCloseTo(313.15, within(0.1));
    assertThat(span.evaporatingK().orElseThrow()).isCloseTo(283.15, within(0.1));
    assertThat(span.superheatK().orElseThrow()).isCloseTo(6, within(0.15));
    assertThat(span.subcoolingK().orElseThrow()).isCloseTo(4.88, within(0.15));
    // Water leaves with 27.6, air enters with 24 Cel.
    assertThat(span.condenserApproachK().orElseThrow()).isCloseTo(12.4, within(0.15));
    assertThat(span.evaporatorApproachK().orElseThrow()).isCloseTo(14, within(0.15));
  }

  @Test
  void nothingIsSteadyInStandingWaterAndNoSentenceHoldsNaN() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .set(Channel.FLOW_HEATER, 0)
                .set(Channel.FLOW_SWITCH, 0)
                .set(Channel.PUMP_ON, 0)
                .off(15)
                .heating(40)
                .off(10)
                .recording());
    assertThat(findings.steady()).isEmpty();
    assertThat(findings.flags())
        .extracting(Flag::rule)
        .contains("no-flow")
        .doesNotContain("low-heat", "low-cop");
    assertThat(findings.flags()).extracting(Flag::evidence).noneMatch(text -> text.contains("NaN"));
  }

  @Test
  void ratioHoldsTheUncertaintyOfTheNameplate() {
    SteadySpan span =
        Analysis.of(RunBuilder.run().circulating(10).heating(90).recording()).steady().get(0);
    Estimate ratio = span.ratio().orElseThrow();
    Estimate heat = span.heatW().orElseThrow();
    Estimate expected = span.expectedHeatW().orElseThrow();
    assertThat(ratio.value()).isCloseTo(heat.value() / expected.value(), within(1e-9));
    assertThat(ratio.standard())
        .isGreaterThan(ratio.value() * heat.standard() / heat.value())
        .isGreaterThan(ratio.value() * 0.025);
  }

  @Test
  void aChangeOfFlowEndsASpan() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .circulating(10)
                .heating(40)
                .heatingAt(Channel.WATER_OUT, 3.2)
                .heatingAt(Channel.FLOW_HEATER, 60)
                .heating(40)
                .recording());
    assertThat(findings.steady()).hasSize(2);
    assertThat(findings.steady().get(0).endMs()).isLessThan(findings.steady().get(1).startMs());
  }

  @Test
  void cyclesOfFiveMinutesHaveNoSteadySpan() {
    RunBuilder run = RunBuilder.run().circulating(10);
    for (int k = 0; k < 6; k++) {
      run.heating(4).circulating(3);
    }
    assertThat(Analysis.of(run.recording()).steady()).isEmpty();
  }

  @Test
  void condensateIsTheDryingOfTheAir() {
    // Moist air by psychrolib 1.1.1: 27 Cel 80 %: W 0.0180249, h 73 147.6 J/kg. Air leaving with 20
    // Cel and 95 %: W 0.013947 (0.95 x 2338.8 Pa), h 20 120 + W x 2 538 200 = 55 520 J/kg. 13 kW
    // from the air: 13 000 / 17 628 = 0.7375 kg/s of dry air, 0.7375 x 0.004078 = 3.01 g/s.
    double rate =
        Condensate.kgPerS(16_000, 3_000, 300.15, 0.8, 293.15, AbsolutePressure.STANDARD_ATMOSPHERE);
    assertThat(rate * 1e3).isCloseTo(3.01, within(0.03));
    assertThat(
            Condensate.kgPerS(
                16_000, 3_000, 300.15, 0.3, 293.15, AbsolutePressure.STANDARD_ATMOSPHERE))
        .isZero();
  }
}
