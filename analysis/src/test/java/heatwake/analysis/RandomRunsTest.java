package heatwake.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.scenario.RandomStory;
import heatwake.analysis.series.Recording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of phases, cycles and figures however a run was sampled. */
class RandomRunsTest {
  private static final int RUNS = 100;

  @ParameterizedTest(name = "seeds {0} and following")
  @ValueSource(longs = {1_000, 2_000, 3_000, 4_000})
  @DisplayName("phases cover the run, cycles are in order, figures are numbers and add up")
  void holds(long first) {
    for (long seed = first; seed < first + RUNS; seed++) {
      Recording recording = RandomStory.of(seed);
      Findings findings = Analysis.of(recording);
      phasesCoverTheRun(seed, recording, findings.phases());
      steadySpansLieInSteadyPhases(seed, findings);
      cyclesAreInOrder(seed, findings);
      figuresAreNumbers(seed, findings);
      cyclesAddUpToTheRun(seed, findings);
    }
  }

  private static void phasesCoverTheRun(long seed, Recording recording, List<PhaseSpan> spans) {
    String why = "seed " + seed + ": " + spans;
    assertThat(spans).as(why).isNotEmpty();
    assertThat(spans.get(0).startMs()).as(why).isEqualTo(recording.startMs());
    assertThat(spans.get(spans.size() - 1).endMs()).as(why).isEqualTo(recording.endMs());
    for (int k = 0; k < spans.size(); k++) {
      assertThat(spans.get(k).endMs() - spans.get(k).startMs())
          .as(why)
          // A run of one instant has one phase of no length.
          .isGreaterThanOrEqualTo(Math.min(1, recording.endMs() - recording.startMs()));
      if (k > 0) {
        assertThat(spans.get(k).startMs()).as(why).isEqualTo(spans.get(k - 1).endMs());
        assertThat(spans.get(k).phase()).as(why).isNotEqualTo(spans.get(k - 1).phase());
      }
    }
  }

  private static void steadySpansLieInSteadyPhases(long seed, Findings findings) {
    long free = Long.MIN_VALUE;
    for (SteadySpan steady : findings.steady()) {
      String why = "seed " + seed + ": " + steady + " in " + findings.phases();
      assertThat(steady.endMs()).as(why).isGreaterThan(steady.startMs());
      assertThat(steady.startMs()).as(why).isGreaterThan(free);
      assertThat(findings.phases())
          .as(why)
          .anyMatch(
              span ->
                  span.phase() == Phase.STEADY
                      && span.startMs() <= steady.startMs()
                      && span.endMs() >= steady.endMs());
      free = steady.endMs();
    }
  }

  private static void cyclesAreInOrder(long seed, Findings findings) {
    List<Cycle> cycles = findings.cycles().stream().map(CycleFigures::cycle).toList();
    String why = "seed " + seed + ": " + cycles;
    for (int k = 0; k < cycles.size(); k++) {
      Cycle cycle = cycles.get(k);
      assertThat(cycle.stopMs().orElse(Long.MAX_VALUE)).as(why).isGreaterThan(cycle.startMs());
      if (k + 1 < cycles.size()) {
        long next = cycles.get(k + 1).startMs();
        assertThat(cycle.nextStartMs()).as(why).hasValue(next);
        assertThat(cycle.stopMs().orElseThrow()).as(why).isLessThanOrEqualTo(next);
      } else {
        assertThat(cycle.nextStartMs()).as(why).isEmpty();
      }
    }
  }

  private static void figuresAreNumbers(long seed, Findings findings) {
    Stream<Optional<Estimate>> ofRun =
        Stream.of(
            findings.heat().deliveredJ(),
            findings.heat().electricJ(),
            findings.heat().electricTotalJ(),
            findings.heat().cop(),
            findings.heat().zeroOffsetK());
    Stream<Optional<Estimate>> ofCycles =
        findings.cycles().stream()
            .flatMap(one -> Stream.of(one.deliveredJ(), one.electricJ(), one.cop()));
    Stream<Optional<Estimate>> ofSteady =
        findings.steady().stream()
            .flatMap(
                one ->
                    Stream.of(
                        one.heatW(),
                        one.powerW(),
                        one.cop(),
                        one.riseK(),
                        one.flowM3PerS(),
                        one.heaterShare(),
                        one.expectedHeatW(),
                        one.expectedPowerW(),
                        one.ratio()));
    Stream.of(ofRun, ofCycles, ofSteady)
        .flatMap(all -> all)
        .flatMap(Optional::stream)
        .forEach(
            one -> {
              assertThat(one.value()).as("seed " + seed).isFinite();
              assertThat(one.standard()).as("seed " + seed).isFinite().isNotNegative();
            });
    findings.steady().stream()
        .flatMap(
            one ->
                Stream.of(
                    one.waterInK(),
                    one.airK(),
                    one.condensingK(),
                    one.evaporatingK(),
                    one.superheatK(),
                    one.subcoolingK(),
                    one.condenserApproachK(),
                    one.evaporatorApproachK(),
                    one.condensateKgPerS()))
        .filter(one -> one.isPresent())
        .forEach(one -> assertThat(one.getAsDouble()).as("seed " + seed).isFinite());
  }

  private static void cyclesAddUpToTheRun(long seed, Findings findings) {
    double sum =
        findings.cycles().stream()
            .flatMap(one -> one.deliveredJ().stream())
            .mapToDouble(Estimate::value)
            .sum();
    // No total is given where too little of it is known, of the run or of a cycle: either may be
    // known without the other.
    boolean allKnown = findings.cycles().stream().allMatch(one -> one.deliveredJ().isPresent());
    findings
        .heat()
        .deliveredJ()
        .filter(total -> allKnown)
        .map(Estimate::value)
        .ifPresent(
            all ->
                assertThat(sum)
                    .as("seed " + seed)
                    .isCloseTo(all, within(1e-6 * Math.abs(all) + 1e-3)));
    double electric =
        findings.cycles().stream()
            .flatMap(one -> one.electricJ().stream())
            .mapToDouble(Estimate::value)
            .sum();
    double whole = findings.heat().electricJ().map(Estimate::value).orElse(0.0);
    assertThat(electric).as("seed " + seed).isCloseTo(whole, within(1e-6 * whole + 1e-3));
  }
}
