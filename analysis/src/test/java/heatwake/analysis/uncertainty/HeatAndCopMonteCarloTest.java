package heatwake.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.water.PoolWater;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Heat and COP of a pool heater with a temperature pair: the GUM's propagation and a Monte Carlo by
 * JCGM 101:2008 against values computed by independent code (IF97 at 0.3 MPa, flow sensor in the
 * cold pipe): 45 gal/min, 27 to 30 Cel, 6.000 kW, u(k)/k 0.1 %, u(P)/P 1 %.
 */
class HeatAndCopMonteCarloTest {
  private static final double FLOW_M3_PER_S = 10.2206118168 / 3600;
  private static final double IN_K = 300.15;
  private static final double OUT_K = 303.15;
  private static final double POWER_KW = 6;
  private static final int TRIALS = 200_000;
  private static final PoolWater WATER = PoolWater.of(0, 0.3e6);

  /** Inputs: flow, in, out, factor on k, power. */
  private static double heatKw(double[] x) {
    return WATER.heatW(x[0], x[1], x[1], x[2]) / 1e3 * x[3];
  }

  private static double cop(double[] x) {
    return heatKw(x) / x[4];
  }

  @ParameterizedTest
  @CsvSource({
    "0.01, 0.10, 0, 1.7108, 0.2912",
    "0.01, 0.10, 0.90, 0.6381, 0.1217",
    "0.01, 0.10, 0.95, 0.5169, 0.1045",
    "0.0115470, 0.05, 0, 0.9322, 0.1662",
    "0.01, 0.0577, 0, 1.0292, 0.1814"
  })
  void propagationAndMonteCarloAgree(
      double flowShare, double temperatureK, double correlation, double heatU, double copU) {
    Estimate[] inputs = {
      new Estimate(FLOW_M3_PER_S, flowShare * FLOW_M3_PER_S),
      new Estimate(IN_K, temperatureK),
      new Estimate(OUT_K, temperatureK),
      new Estimate(1, 0.001),
      new Estimate(POWER_KW, 0.01 * POWER_KW)
    };
    Correlation pair = Correlation.none(inputs.length).with(1, 2, correlation);
    Estimate heat = Propagation.of(HeatAndCopMonteCarloTest::heatKw, pair, inputs);
    Estimate cop = Propagation.of(HeatAndCopMonteCarloTest::cop, pair, inputs);
    assertThat(heat.value()).isCloseTo(35.48058, within(5e-5));
    assertThat(heat.standard()).isCloseTo(heatU, within(2e-4));
    assertThat(cop.value()).isCloseTo(5.9134, within(5e-5));
    assertThat(cop.standard()).isCloseTo(copU, within(6e-5));

    Random random = new Random(1);
    double sum = 0;
    double squares = 0;
    double copSquares = 0;
    int covered = 0;
    double truth = heatKw(new double[] {FLOW_M3_PER_S, IN_K, OUT_K, 1, POWER_KW});
    for (int i = 0; i < TRIALS; i++) {
      double common = random.nextGaussian();
      double[] x = {
        inputs[0].value() + inputs[0].standard() * random.nextGaussian(),
        IN_K + temperatureK * mixed(common, random.nextGaussian(), correlation),
        OUT_K + temperatureK * mixed(common, random.nextGaussian(), correlation),
        1 + 0.001 * random.nextGaussian(),
        POWER_KW * (1 + 0.01 * random.nextGaussian())
      };
      double measured = heatKw(x);
      sum += measured - truth;
      squares += (measured - truth) * (measured - truth);
      double copError = cop(x) - cop.value();
      copSquares += copError * copError;
      // A stated interval counts as right when it holds the truth.
      Estimate[] stated = inputs.clone();
      stated[0] = new Estimate(x[0], flowShare * x[0]);
      stated[1] = new Estimate(x[1], temperatureK);
      stated[2] = new Estimate(x[2], temperatureK);
      if (i % 100 == 0
          && Math.abs(measured - truth)
              <= Propagation.of(HeatAndCopMonteCarloTest::heatKw, pair, stated).expanded()) {
        covered++;
      }
    }
    double deviation = Math.sqrt(squares / TRIALS - sum / TRIALS * (sum / TRIALS));
    double coverage = covered / (TRIALS / 100.0);
    System.out.printf(
        Locale.ROOT,
        "heat, flow %.2f %%, probes %.3f K, r %.2f: GUM %.4f kW, Monte Carlo %.4f kW, intervals"
            + " hold the truth %.1f %%%n",
        flowShare * 100,
        temperatureK,
        correlation,
        heat.standard(),
        deviation,
        coverage * 100);
    assertThat(deviation).isCloseTo(heat.standard(), within(0.01 * heat.standard()));
    // A quotient's tails add a little that a first-order propagation leaves out.
    assertThat(Math.sqrt(copSquares / TRIALS))
        .isCloseTo(cop.standard(), within(0.01 * cop.standard()));
    assertThat(coverage).isBetween(0.935, 0.97);
  }

  /** Two standard normal numbers correlated by sharing a part. */
  private static double mixed(double common, double own, double correlation) {
    return Math.sqrt(correlation) * common + Math.sqrt(1 - correlation) * own;
  }
}
