package heatwake.dashboard.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A fast part of the bench, with seeds of its own, that must never get worse: no flag on a healthy
 * run, and the true heat within what the analysis states. One and a half expanded uncertainties
 * (three standard ones), since one run in twenty may lie beyond one.
 */
class HealthyRunsTest {
  private static final long SEED = 61_803;
  private static final int EVERY = 4;

  static List<Case> cases() {
    List<Case> all = HealthyCases.of(Stock.seen(), SEED);
    return IntStream.range(0, all.size()).filter(i -> i % EVERY == 0).mapToObj(all::get).toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  @DisplayName("a healthy run raises no flag, and its heat is what was stated")
  void healthyRun(Case one) {
    Result result = Result.of(one);
    assertThat(result.findings().flags()).isEmpty();
    assertThat(result.wrongSide()).isFalse();
    assertThat(result.heat())
        .hasValueSatisfying(heat -> assertThat(heat.inExpanded()).isLessThan(1.5));
  }

  @Test
  void theSameSeedGivesTheSameRun() {
    Case one = HealthyCases.of(Stock.seen(), SEED).get(2);
    Case again = HealthyCases.of(Stock.seen(), SEED).get(2);
    assertThat(SimulatedRecording.of(one).truth().deliveredJ())
        .isEqualTo(SimulatedRecording.of(again).truth().deliveredJ());
  }
}
