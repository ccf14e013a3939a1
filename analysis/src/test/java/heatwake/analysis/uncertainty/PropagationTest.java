package heatwake.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Reference: worked examples of the GUM (JCGM 100:2008), annexes G and H. */
class PropagationTest {
  /** GUM H.2, table H.2: five simultaneous readings of voltage, current and phase. */
  private static final double[] VOLT = {5.007, 4.994, 5.005, 4.990, 4.999};

  private static final double[] MILLIAMPERE = {19.663, 19.639, 19.640, 19.685, 19.678};
  private static final double[] RADIAN = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

  private static final Estimate[] MEANS = {mean(VOLT), mean(MILLIAMPERE), mean(RADIAN)};

  private static final Correlation CORRELATION =
      Correlation.none(3)
          .with(0, 1, correlation(VOLT, MILLIAMPERE))
          .with(0, 2, correlation(VOLT, RADIAN))
          .with(1, 2, correlation(MILLIAMPERE, RADIAN));

  /** Tables H.2 to H.4, with more digits recomputed from the readings. */
  @Test
  void correlatedInputsOfExampleH2() {
    assertThat(correlation(VOLT, MILLIAMPERE)).isCloseTo(-0.3553, within(5e-5));
    assertThat(correlation(VOLT, RADIAN)).isCloseTo(0.8576, within(5e-5));
    assertThat(correlation(MILLIAMPERE, RADIAN)).isCloseTo(-0.6451, within(5e-5));
    check(PropagationTest::resistance, 127.732, 0.07107);
    check(PropagationTest::reactance, 219.847, 0.29558);
    check(PropagationTest::impedance, 254.260, 0.23634);
    assertThat(correlation(PropagationTest::resistance, PropagationTest::reactance))
        .isCloseTo(-0.588, within(1e-3));
    assertThat(correlation(PropagationTest::resistance, PropagationTest::impedance))
        .isCloseTo(-0.485, within(1e-3));
    assertThat(correlation(PropagationTest::reactance, PropagationTest::impedance))
        .isCloseTo(0.993, within(1e-3));
  }

  private static double resistance(double[] x) {
    return impedance(x) * Math.cos(x[2]);
  }

  private static double reactance(double[] x) {
    return impedance(x) * Math.sin(x[2]);
  }

  private static double impedance(double[] x) {
    return x[0] / (x[1] / 1e3);
  }

  private static void check(ToDoubleFunction<double[]> model, double value, double standard) {
    Estimate found = Propagation.of(model, CORRELATION, MEANS);
    assertThat(found.value()).isCloseTo(value, within(5e-4));
    assertThat(found.standard()).isCloseTo(standard, within(2e-5));
  }

  private static double correlation(
      ToDoubleFunction<double[]> one, ToDoubleFunction<double[]> other) {
    double[] first = Propagation.contributions(one, MEANS);
    double[] second = Propagation.contributions(other, MEANS);
    return Propagation.covariance(first, second, CORRELATION)
        / Math.sqrt(
            Propagation.covariance(first, first, CORRELATION)
                * Propagation.covariance(second, second, CORRELATION));
  }

  /** Example H.2 again: without the correlations the resistance would seem three times as bad. */
  @Test
  void correlationsLeftOutOfExampleH2() {
    assertThat(Propagation.of(PropagationTest::resistance, MEANS).standard())
        .isCloseTo(0.195, within(5e-4));
  }

  /** GUM H.1.7: end gauge; inputs from memory, arithmetic recomputed. */
  @Test
  void endGaugeOfExampleH1() {
    List<Component> nanometres =
        List.of(
            new Component(25, 18),
            new Component(9.7, 25.6),
            new Component(2.9, 50),
            new Component(16.6, 2));
    assertThat(Component.combined(nanometres)).isCloseTo(32, within(0.5));
    // The GUM prints 16.7 from its rounded u_c of 32.
    double degrees = Component.effectiveDegreesOfFreedom(nanometres);
    assertThat(degrees).isCloseTo(16.7, within(0.7));
    assertThat(Math.floor(degrees)).isEqualTo(16);
    double secondOrder = Math.hypot(11.7, 1.7);
    assertThat(Math.hypot(Component.combined(nanometres), secondOrder)).isCloseTo(34, within(0.5));
  }

  /** GUM G.4.2: a product of three, as heat is; inputs from memory, arithmetic recomputed. */
  @Test
  void productOfExampleG42() {
    List<Component> percent =
        List.of(new Component(0.25, 9), new Component(0.57, 4), new Component(0.82, 14));
    assertThat(Component.combined(percent)).isCloseTo(1.03, within(0.005));
    assertThat(Component.effectiveDegreesOfFreedom(percent)).isCloseTo(19.0, within(0.05));
    Estimate product =
        Propagation.of(
            x -> x[0] * x[1] * x[2],
            new Estimate(2, 0.0025 * 2),
            new Estimate(3, 0.0057 * 3),
            new Estimate(5, 0.0082 * 5));
    assertThat(product.standard() / product.value()).isCloseTo(0.0103, within(5e-5));
  }

  /** Pair rule: u sqrt(2 (1 - r)). */
  @Test
  void differenceOfACorrelatedPair() {
    Estimate out = new Estimate(303.15, 0.1);
    Estimate in = new Estimate(300.15, 0.1);
    assertThat(out.minus(in, 0.95).standard()).isCloseTo(0.0316, within(5e-5));
    assertThat(out.minus(in, 0).standard()).isCloseTo(out.minus(in).standard(), within(1e-15));
    assertThat(out.minus(in, 1).standard()).isZero();
  }

  @Test
  void componentsTakenAsCertainLimitNothing() {
    assertThat(Component.effectiveDegreesOfFreedom(List.of(Component.certain(1)))).isInfinite();
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatThrownBy(() -> Correlation.none(2).with(0, 1, 1.2)).hasMessageContaining("1.2");
    assertThatThrownBy(() -> new Component(-1, 3)).hasMessageContaining("-1");
    assertThatThrownBy(() -> new Component(1, 0)).hasMessageContaining("above zero");
  }

  private static Estimate mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    double mean = sum / values.length;
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return new Estimate(mean, Math.sqrt(squares / (values.length - 1.0) / values.length));
  }

  private static double correlation(double[] one, double[] other) {
    double meanOne = mean(one).value();
    double meanOther = mean(other).value();
    double products = 0;
    double squaresOne = 0;
    double squaresOther = 0;
    for (int i = 0; i < one.length; i++) {
      products += (one[i] - meanOne) * (other[i] - meanOther);
      squaresOne += (one[i] - meanOne) * (one[i] - meanOne);
      squaresOther += (other[i] - meanOther) * (other[i] - meanOther);
    }
    return products / Math.sqrt(squaresOne * squaresOther);
  }
}
