package heatwake.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Planes by hand: y = 3 + 2 x1 - 5 x2. */
class LeastSquaresTest {
  private static final int N = 300;

  private static double[] x1() {
    double[] x1 = new double[N];
    Arrays.setAll(x1, i -> 0.7 * i);
    return x1;
  }

  private static double[] plane(double[] x1, double[] x2) {
    double[] y = new double[N];
    Arrays.setAll(y, i -> 3 + 2 * x1[i] - 5 * x2[i]);
    return y;
  }

  @Test
  void findsAPlane() {
    double[] x2 = new double[N];
    Arrays.setAll(x2, i -> i % 17);
    LeastSquares fit = LeastSquares.fit(x1(), x2, plane(x1(), x2), N).orElseThrow();
    assertThat(fit.a().value()).isCloseTo(2, within(1e-9));
    assertThat(fit.b().value()).isCloseTo(-5, within(1e-9));
  }

  /** The mean of three hundred times 0.1 is not 0.1 to the last digit. */
  @Test
  void aVariableThatDoesNotVaryHasNoSlope() {
    double[] still = new double[N];
    Arrays.fill(still, 0.1);
    LeastSquares fit = LeastSquares.fit(x1(), still, plane(x1(), still), N).orElseThrow();
    assertThat(fit.a().value()).isCloseTo(2, within(1e-9));
    assertThat(fit.b()).isEqualTo(Estimate.exact(0));
    LeastSquares turned = LeastSquares.fit(still, x1(), plane(still, x1()), N).orElseThrow();
    assertThat(turned.a()).isEqualTo(Estimate.exact(0));
    assertThat(turned.b().value()).isCloseTo(-5, within(1e-9));
  }

  @Test
  void twoThatVaryAlikeCannotBeToldApart() {
    double[] twice = new double[N];
    Arrays.setAll(twice, i -> 1.4 * i);
    assertThat(LeastSquares.fit(x1(), twice, plane(x1(), twice), N)).isEmpty();
  }
}
