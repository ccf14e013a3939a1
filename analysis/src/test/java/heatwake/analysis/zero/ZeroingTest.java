package heatwake.analysis.zero;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

/** Zeros of runs whose offset is known. */
class ZeroingTest {
  private static final double OFFSET_K = -0.18;

  @Test
  void standingWaterIsNeverUsed() {
    Findings findings = Analysis.of(offset().off(60).heating(60).off(60).recording());
    assertThat(findings.zero()).isEmpty();
    assertThat(findings.heat().zeroOffsetK()).isEmpty();
    assertThat(findings.missing())
        .anyMatch(sentence -> sentence.startsWith("zero of the pair: no settled stretch"));
  }

  @Test
  void residualHeatAfterAStopIsLeftOut() {
    // Only after the stop: the outlet comes down with a time constant of 30 s.
    ProbeZero zero = zero(offset().off(5).heating(30).circulating(12).recording());
    assertThat(zero.offsetK().value()).isCloseTo(OFFSET_K, within(zero.offsetK().expanded()));
    assertThat(zero.offsetK().expanded()).isLessThan(0.04);
    assertThat(zero.spans()).hasSize(1);
  }

  @Test
  void threeMinutesOfPumpBeforeTheStartAreEnough() {
    ProbeZero zero = zero(offset().off(5).circulating(3.5).heating(30).off(10).recording());
    assertThat(zero.offsetK().value()).isCloseTo(OFFSET_K, within(zero.offsetK().expanded()));
  }

  @Test
  void steppedProbesWidenTheZero() {
    ProbeZero zero =
        zero(
            offset()
                .noise(Channel.WATER_IN, 0)
                .noise(Channel.WATER_OUT, 0)
                .resolution(Channel.WATER_IN, 0.0625)
                .resolution(Channel.WATER_OUT, 0.0625)
                .circulating(15)
                .heating(30)
                .recording());
    // A rectangular step of 1/16 K, 0.0625 / sqrt(12) = 0.018 K (GUM F.2.2.1): the outlet moves
    // through its steps in this run, the inlet never does, so that its step cannot be known.
    assertThat(zero.offsetK().standard()).isBetween(0.018, 0.026);
    assertThat(zero.offsetK().value()).isCloseTo(OFFSET_K, within(zero.offsetK().expanded()));
  }

  @Test
  void noiseIsAveragedAway() {
    Estimate offset = zero(offset().circulating(30).heating(30).recording()).offsetK();
    // 0.03 K of each probe over 1500 s and more is below 0.002 K; what is left is the floor.
    assertThat(offset.standard()).isBetween(0.005, 0.008);
  }

  @Test
  void driftIsNoticedAndSaid() {
    RunBuilder run =
        RunBuilder.run()
            .noise(Channel.WATER_IN, 0.03)
            .noise(Channel.WATER_OUT, 0.03)
            .change(Channel.WATER_OUT, (atS, value) -> value + 0.2 * atS / 7800)
            .circulating(10)
            .heating(110)
            .circulating(10);
    Findings findings = Analysis.of(run.recording());
    ProbeZero zero = findings.zero().orElseThrow();
    assertThat(zero.driftK().value()).isCloseTo(0.185, within(0.02));
    assertThat(zero.offsetK().standard()).isGreaterThan(0.05);
    assertThat(findings.missing()).anyMatch(sentence -> sentence.contains("it moved by +0.1"));
  }

  @Test
  void withoutAWitnessOfRestThereIsNoZero() {
    Findings findings =
        Analysis.of(
            offset()
                .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER)
                .circulating(20)
                .heating(60)
                .circulating(20)
                .recording());
    assertThat(findings.zero()).isEmpty();
    assertThat(findings.heat().deliveredJ()).isPresent();
  }

  @Test
  void transitThroughTheExchangerIsAligned() {
    // A slug of pipe water 3 K warmer passes the inlet, and the outlet 40 s later.
    Recording recording =
        RunBuilder.run()
            .noise(Channel.WATER_IN, 0.02)
            .noise(Channel.WATER_OUT, 0.02)
            .change(Channel.WATER_IN, (atS, value) -> value + slug(atS - 240))
            .change(Channel.WATER_OUT, (atS, value) -> value + slug(atS - 280))
            .circulating(15)
            .heating(30)
            .recording();
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    assertThat(Alignment.delayInstants(timeline, phases.spans())).isBetween(38, 42);
  }

  @Test
  void nothingIsShiftedWhereNothingShows() {
    Recording recording = offset().circulating(15).heating(30).circulating(15).recording();
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    assertThat(Alignment.delayInstants(timeline, phases.spans())).isZero();
  }

  /** A crankcase heater and a lamp, always on, move no heat to the water. */
  @Test
  void aSmallLoadThatIsAlwaysOnLeavesTheZero() {
    Findings findings =
        Analysis.of(alwaysOn(150).circulating(15).heating(60).circulating(15).recording());
    assertThat(findings.phases())
        .extracting(PhaseSpan::phase)
        .contains(Phase.FAN)
        .doesNotContain(Phase.CIRCULATING);
    Estimate offsetK = findings.zero().orElseThrow().offsetK();
    assertThat(offsetK.value()).isCloseTo(OFFSET_K, within(offsetK.expanded()));
  }

  /** Nothing tells there that water moves. */
  @Test
  void butNotWhereNoProbeSeesTheWaterMove() {
    assertThat(
            Analysis.of(
                    alwaysOn(150)
                        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
                        .fan(15)
                        .heating(60)
                        .recording())
                .zero())
        .isEmpty();
  }

  private static RunBuilder alwaysOn(double watts) {
    return offset()
        .without(Channel.CURRENT)
        .change(Channel.POWER, (atS, value) -> value < 500 ? value + watts : value);
  }

  private static double slug(double atS) {
    return 3 * Math.exp(-(atS / 20) * (atS / 20));
  }

  private static RunBuilder offset() {
    return RunBuilder.run()
        .noise(Channel.WATER_IN, 0.03)
        .noise(Channel.WATER_OUT, 0.03)
        .change(Channel.WATER_OUT, (atS, value) -> value + OFFSET_K);
  }

  private static ProbeZero zero(Recording recording) {
    return Analysis.of(recording).zero().orElseThrow();
  }
}
