package heatwake.dashboard.score;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.dashboard.demo.plant.sensor.Kit;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the method itself errs by, with probes that lag but do not err, on both families. */
class PerfectProbesTest {
  private static final double MOST_SHARE = 0.005;
  private static final long SEED = 900;

  static Stream<Case> cases() {
    return Stream.of(Stock.seen(), Stock.unseen())
        .flatMap(
            stock ->
                Stream.of(0, 1, 2)
                    .map(
                        i ->
                            new Draft("perfect probes", stock, SEED + i)
                                .kit(new Kit(2, 0, 0, 1e-6, 14, 1e-6, 1e-3, 0))
                                .hours(8)
                                .build()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  @DisplayName("without probe errors heat is within half a per cent of the truth")
  void methodIsExact(Case one) {
    Result result = Result.of(one);
    assertThat(result.heat())
        .hasValueSatisfying(
            heat -> assertThat(Math.abs(heat.relativeError())).isLessThan(MOST_SHARE));
  }
}
