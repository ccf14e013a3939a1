package heatwake.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Whole runs whose figures can be worked out by hand. */
class AnalysisTest {
  @Test
  void findsTheHeatOfAnHour() {
    Recording recording =
        RunBuilder.run().off(10).circulating(10).heating(60).circulating(10).off(10).recording();
    Findings findings = Analysis.of(recording);
    // 150 L/min, 1.6 K for an hour with a heat coefficient of 4.167 MJ/(m3 K) (IF97 at 0.17 MPa,
    // 26 and 27.6 Cel, meter cold, shared heat-coefficient table 4.168 at 26/28): 16.67 kWh. The
    // first-order lag of 30 s at start comes back after the stop.
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    assertThat(delivered.value() / 3.6e6).isCloseTo(16.67, within(0.02));
    // 0.1 K for each probe, zeroed: what stays is a tenth of 0.141 K and the gain; flow 2 %.
    double expectedShare = Math.hypot(0.02, Math.hypot(0.1 * 0.1414 / 1.6, 0.005));
    assertThat(delivered.standard() / delivered.value()).isCloseTo(expectedShare, within(0.002));
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2.7, within(0.01));
    assertThat(findings.heat().cop().orElseThrow().value()).isCloseTo(16.67 / 2.7, within(0.02));
    assertThat(findings.heat().flowWay()).contains("measured by flow-heater");
    assertThat(findings.steady()).hasSize(1);
    SteadySpan steady = findings.steady().get(0);
    assertThat(steady.heatW().orElseThrow().value()).isCloseTo(16_670, within(30.0));
    assertThat(steady.powerW().orElseThrow().value()).isCloseTo(2700, within(1.0));
    assertThat(steady.riseK().orElseThrow().value()).isCloseTo(1.6, within(0.01));
    assertThat((steady.endMs() - steady.startMs()) / 60e3).isBetween(55.0, 60.0);
  }

  @Test
  void takesTheOffsetOfAProbeOut() {
    Recording recording =
        RunBuilder.run()
            .change(Channel.WATER_OUT, (atS, value) -> value + 0.25)
            .noise(Channel.WATER_OUT, 0.03)
            .noise(Channel.WATER_IN, 0.03)
            .off(10)
            .circulating(8)
            .heating(60)
            .circulating(15)
            .recording();
    Findings findings = Analysis.of(recording);
    Estimate offset = findings.heat().zeroOffsetK().orElseThrow();
    assertThat(offset.value()).isCloseTo(0.25, within(offset.expanded()));
    assertThat(offset.expanded()).isLessThan(0.03);
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(16.67, within(0.1));
  }

  @Test
  void aPairThatCoolsTheWaterGivesNoHeat() {
    Findings findings =
        Analysis.of(
            RunBuilder.run()
                .change(Channel.WATER_OUT, (atS, value) -> 52 - value)
                .circulating(15)
                .heating(60)
                .recording());
    assertThat(findings.heat().deliveredJ()).isEmpty();
    assertThat(findings.heat().cop()).isEmpty();
    assertThat(findings.heat().electricJ()).isPresent();
    assertThat(findings.missing())
        .anyMatch(sentence -> sentence.startsWith("heat: water-out reads colder"));
  }

  @Test
  void silenceIsLeftOutOfBothAndSaid() {
    Recording recording =
        RunBuilder.run()
            .circulating(15)
            .heating(30)
            .silent(Channel.WATER_OUT)
            .heating(30)
            .free(Channel.WATER_OUT)
            .heating(30)
            .recording();
    Findings findings = Analysis.of(recording);
    // An hour of 16.67 kW is known, half an hour is not; the energy of it is.
    assertThat(findings.heat().deliveredJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(16.67, within(0.2));
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(1.5 * 2.7, within(0.02));
    assertThat(findings.heat().cop().orElseThrow().value()).isCloseTo(16.67 / 2.7, within(0.06));
    assertThat(findings.missing())
        .anyMatch(sentence -> sentence.startsWith("heat: 30 min of the 90 min"));
  }

  @Test
  void nothingRecordedIsNoFailure() {
    Recording empty = new Recording(1, Rigs.bare(), 0, 0, Map.of(), List.of(), List.of());
    Findings findings = Analysis.of(empty);
    assertThat(findings.heat().deliveredJ()).isEmpty();
    assertThat(findings.missing()).isNotEmpty();
  }
}
