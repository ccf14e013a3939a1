package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.example.InventedNight;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BypassAdviceTest {
  /** Long after the water stopped, so that the share is that of the last running. */
  private static final long AFTER = InventedNight.minute(720);

  /** The range is 1.14 +- 0.06 to 2.54 +- 0.12 K; the rise is known to 0.06 K (all k = 2). */
  @ParameterizedTest
  @CsvSource({
    "0.90, WARNING, Rise too small",
    "1.10, PLAIN, Rise at the edge",
    "1.20, PLAIN, Rise at the edge",
    "1.58, GOOD, Rise within the range",
    "2.45, PLAIN, Rise at the edge",
    "2.60, PLAIN, Rise at the edge",
    "2.80, WARNING, Rise too great",
  })
  void saysWhatTheUncertaintySupports(double riseK, Tone tone, String beginning) {
    BypassAdvice advice =
        BypassAdvice.of(withRise(Optional.of(new Estimate(riseK, 0.03))), AFTER, UnitChoice.METRIC)
            .orElseThrow();
    assertThat(advice.tone()).isEqualTo(tone);
    assertThat(advice.advice()).startsWith(beginning);
  }

  @Test
  void showsShareRiseAndRange() {
    BypassAdvice advice =
        BypassAdvice.of(withRise(Optional.of(new Estimate(1.58, 0.03))), AFTER, UnitChoice.METRIC)
            .orElseThrow();
    assertThat(advice.share()).isEqualTo("61 ± 3 %");
    assertThat(advice.rise()).isEqualTo("1.58 ± 0.06 K");
    assertThat(advice.range()).isEqualTo("1.14 to 2.54 K");
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
        BypassAdvice.of(withRise(Optional.of(new Estimate(1.5, 0.05))), AFTER, UnitChoice.US)
            .orElseThrow();
    assertThat(advice.scale().orElseThrow().rise()).isCloseTo(2.7, within(1e-9));
    assertThat(advice.rise()).startsWith("2.70 ± 0.18");
  }

  @Test
  void withoutARangeItSaysWhatIsNeeded() {
    Findings findings =
        withBypass(
            new BypassFigures(
                0,
                Optional.of(new Estimate(0.6, 0.02)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    BypassAdvice advice = BypassAdvice.of(findings, AFTER, UnitChoice.METRIC).orElseThrow();
    assertThat(advice.share()).isEqualTo("60 ± 4 %");
    assertThat(advice.rise()).isEqualTo("–");
    assertThat(advice.advice()).contains("nameplate flows and rating points");
    assertThat(advice.scale()).isEmpty();
  }

  private static Findings withRise(Optional<Estimate> riseK) {
    BypassFigures figures = InventedNight.findings().bypass().orElseThrow();
    return withBypass(
        new BypassFigures(
            figures.atMs(),
            figures.heaterShare(),
            riseK,
            figures.expectedHeatW(),
            figures.riseAtFlowMaxK(),
            figures.riseAtFlowMinK()));
  }

  private static Findings withBypass(BypassFigures figures) {
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
        night.flags(),
        night.startup(),
        night.verdict(),
        night.missing(),
        night.traces());
  }
}
