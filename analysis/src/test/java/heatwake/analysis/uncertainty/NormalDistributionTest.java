package heatwake.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the usual table of the standard normal distribution. */
class NormalDistributionTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0.500000",
    "0.5, 0.691462",
    "1, 0.841345",
    "1.96, 0.975002",
    "3, 0.998650",
    "-1, 0.158655",
  })
  void isThatOfTheTable(double deviations, double probability) {
    assertThat(NormalDistribution.below(deviations)).isCloseTo(probability, within(1e-6));
    assertThat(new Estimate(5 + 2 * deviations, 2).probabilityAbove(5))
        .isCloseTo(probability, within(1e-6));
  }

  @Test
  void whatIsExactIsAboveOrNot() {
    assertThat(Estimate.exact(1).probabilityAbove(0.9)).isEqualTo(1);
    assertThat(Estimate.exact(0.8).probabilityAbove(0.9)).isZero();
  }
}
