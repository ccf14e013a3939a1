package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.example.InventedNight;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BypassAdviceTest {
  /** Long after the water stopped, so that the share is that of the last running. */
  private static final long AFTER = InventedNight.minute(720);

  private static final double L_PER_MIN = 1e-3 / 60;

  /** The range is 1.14 +- 0.06 to 2.54 +- 0.12 K; the rise is known to 0.06 K (all k = 2). */
  @ParameterizedTest
  @CsvSource({
    "0.90, WARNING, Rise too small: more water than the nameplate allows, or less heat",
    "1.10, PLAIN, Rise at the edge",
    "1.20, PLAIN, Rise at the edge",
    "1.58, GOOD, Rise within the range",
    "2.45, PLAIN, Rise at the edge",
    "2.60, PLAIN, Rise at the edge",
    "2.80, WARNING, Rise too great",
  })
  void withoutAMeterItSaysWhatTheUncertaintyOfTheRiseSupports(
      double riseK, Tone tone, String beginning) {
    BypassAdvice advice = advice(withRise(riseK, 0.03));
    assertThat(advice.tone()).isEqualTo(tone);
    assertThat(advice.advice()).startsWith(beginning);
  }

  /** 1.40 K is well within 1.14 to 2.54 K, but not if it may be 0.25 K off: that is the pair's. */
  @Test
  void anUncertainPairMovesNoValve() {
    BypassAdvice advice = advice(withRise(1.40, 0.15));
    assertThat(advice.tone()).isEqualTo(Tone.PLAIN);
    assertThat(advice.advice())
        .isEqualTo(
            "The probe pair is too uncertain (± 0.3 K) to set the bypass by: leave it as it is."
                + " Zero it: let the water circulate for 10 min with the compressor at rest.");
  }

  /**
   * Heat is flow times rise times 4.17 MJ/(m3 K) (water at 27 Cel, IAPWS-IF97): at 41 L/min 0.31 kW
   * make 0.11 K. Where the nameplate asks for 24 to 79 L/min that is little heat, not much water.
   */
  @Test
  void littleHeatIsNotTakenForMuchWater() {
    BypassAdvice advice = advice(withFlow(41, 0.4, 24, 79, 0.11));
    assertThat(advice.tone()).isEqualTo(Tone.GOOD);
    assertThat(advice.advice())
        .isEqualTo(
            "Flow within the nameplate's range: leave the bypass as it is. The rise is small because"
                + " the heat is low: part load, or a fault. Look at the heat first.");
    assertThat(advice.flow()).contains("41.0 ± 0.8 L/min");
    assertThat(advice.range().orElseThrow().value()).isEqualTo("24 to 79 L/min");
    assertThat(advice.scale().orElseThrow().value()).isCloseTo(41, within(1e-9));
    assertThat(advice.scale().orElseThrow().above()).isEqualTo("more water");
  }

  @ParameterizedTest
  @CsvSource({
    "20, 0.4, WARNING, Too little water through the heater",
    "24, 0.4, PLAIN, Flow near the nameplate's least",
    "41, 0.4, GOOD, Flow within the nameplate's range: leave the bypass as it is.",
    "79, 1.6, PLAIN, Flow near the nameplate's greatest",
    "90, 1.8, WARNING, Too much water through the heater",
    "41, 12, PLAIN, The flow through the heater is too uncertain (± 24 L/min)",
  })
  void aMeasuredFlowDecidesWhateverTheRise(
      double flow, double standard, Tone tone, String beginning) {
    for (double riseK : new double[] {0.5, 1.5, 3.5}) {
      BypassAdvice advice = advice(withFlow(flow, standard, 24, 79, riseK));
      assertThat(advice.tone()).isEqualTo(tone);
      assertThat(advice.advice()).startsWith(beginning);
    }
  }

  /** Rise is heat over flow: less heat at the right flow looks like more water, and hides less. */
  @Test
  void atPartLoadTheRiseIsNoNewsOfTheBypass() {
    for (double riseK : new double[] {0.8, 1.58, 2.45}) {
      BypassAdvice advice = advice(with(withRise(riseK, 0.03), new Estimate(0.6, 0.02)));
      assertThat(advice.tone()).isEqualTo(Tone.PLAIN);
      assertThat(advice.advice()).startsWith("The heater draws 60 ± 4 % of its nameplate power");
    }
    assertThat(advice(with(withRise(2.8, 0.03), new Estimate(0.6, 0.02))).advice())
        .startsWith("Rise too great");
  }

  @Test
  void aSickHeaterIsLookedAtBeforeItsBypass() {
    Findings sick =
        withBypass(
            withRise(0.8, 0.03),
            new Flag(
                "low-charge",
                Side.REFRIGERANT,
                Severity.ALARM,
                InventedNight.minute(480),
                InventedNight.minute(639),
                "superheat 16 K, subcooling 0.5 K",
                List.of("a leak"),
                "A certified handler looks for the leak."));
    BypassAdvice advice = BypassAdvice.of(sick, AFTER, UnitChoice.METRIC).orElseThrow();
    assertThat(advice.tone()).isEqualTo(Tone.PLAIN);
    assertThat(advice.advice()).contains("Look at the heat first");
  }

  @Test
  void showsShareRiseAndRange() {
    BypassAdvice advice = advice(withRise(1.58, 0.03));
    assertThat(advice.share()).isEqualTo("61 ± 3 %");
    assertThat(advice.rise()).isEqualTo("1.58 ± 0.06 K");
    assertThat(advice.range().orElseThrow().value()).isEqualTo("1.14 to 2.54 K");
    assertThat(advice.flow()).isEmpty();
  }

  @Test
  void theShareFollowsTheHandOnTheValve() {
    Findings night = InventedNight.findings();
    assertThat(share(night, 30.9)).isEqualTo("41 %");
    assertThat(share(night, 31.4)).isEqualTo("61 %");
  }

  private static String share(Findings findings, double minute) {
    Findings soFar = InventedNight.until(findings, minute);
    return BypassAdvice.of(soFar, InventedNight.minute(minute), UnitChoice.METRIC)
        .orElseThrow()
        .share();
  }

  /** 1 K of difference is 1.8 degF of difference (NIST SP 811, appendix B.8). */
  @Test
  void differencesInFahrenheitPickUpNoOffset() {
    BypassAdvice advice =
        BypassAdvice.of(withBypass(withRise(1.5, 0.05)), AFTER, UnitChoice.US).orElseThrow();
    assertThat(advice.scale().orElseThrow().value()).isCloseTo(2.7, within(1e-9));
    assertThat(advice.rise()).startsWith("2.70 ± 0.18");
  }

  @Test
  void withoutARangeItSaysWhatIsNeeded() {
    BypassAdvice advice =
        advice(
            new BypassFigures(
                0,
                Optional.of(new Estimate(0.6, 0.02)),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    assertThat(advice.share()).isEqualTo("60 ± 4 %");
    assertThat(advice.rise()).isEqualTo("–");
    assertThat(advice.advice()).contains("nameplate flows and rating points");
    assertThat(advice.scale()).isEmpty();
  }

  private static BypassAdvice advice(BypassFigures figures) {
    return BypassAdvice.of(withBypass(figures), AFTER, UnitChoice.METRIC).orElseThrow();
  }

  private static BypassFigures withRise(double riseK, double standardK) {
    BypassFigures figures = InventedNight.findings().bypass().orElseThrow();
    return new BypassFigures(
        figures.atMs(),
        figures.heaterShare(),
        Optional.empty(),
        figures.flowMinM3PerS(),
        figures.flowMaxM3PerS(),
        Optional.of(new Estimate(riseK, standardK)),
        figures.expectedHeatW(),
        figures.riseAtFlowMaxK(),
        figures.riseAtFlowMinK(),
        figures.powerRatio());
  }

  private static BypassFigures withFlow(
      double flow, double standard, double least, double greatest, double riseK) {
    BypassFigures figures = withRise(riseK, 0.03);
    return new BypassFigures(
        figures.atMs(),
        figures.heaterShare(),
        Optional.of(new Estimate(flow * L_PER_MIN, standard * L_PER_MIN)),
        OptionalDouble.of(least * L_PER_MIN),
        OptionalDouble.of(greatest * L_PER_MIN),
        figures.riseK(),
        figures.expectedHeatW(),
        figures.riseAtFlowMaxK(),
        figures.riseAtFlowMinK(),
        figures.powerRatio());
  }

  private static BypassFigures with(BypassFigures figures, Estimate powerRatio) {
    return new BypassFigures(
        figures.atMs(),
        figures.heaterShare(),
        figures.flowM3PerS(),
        figures.flowMinM3PerS(),
        figures.flowMaxM3PerS(),
        figures.riseK(),
        figures.expectedHeatW(),
        figures.riseAtFlowMaxK(),
        figures.riseAtFlowMinK(),
        Optional.of(powerRatio));
  }

  private static Findings withBypass(BypassFigures figures, Flag... flags) {
    Findings night = InventedNight.findings();
    return new Findings(
        night.run(),
        night.startMs(),
        night.endMs(),
        night.channels(),
        night.heat(),
        night.heatDoubt(),
        night.zero(),
        Optional.of(figures),
        night.pool(),
        night.cost(),
        night.steady(),
        night.phases(),
        night.cycles(),
        List.of(flags),
        night.startup(),
        night.verdict(),
        night.missing(),
        night.traces());
  }
}
