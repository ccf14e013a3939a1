package heatwake.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HeatUnderWayTest {
  @Test
  void aHeatThatEndsLowerHasGivenBackWhatWasHeld() {
    // Half an hour by the second: 10 kW for a half, then 7 kW; mean 8.5 kW. 150 s of 3 kW are
    // 450 kJ, over 1800 s 250 W, rectangular 144.3 W. With 100 W from elsewhere: 175.6 W.
    double[] heat = new double[1800];
    Arrays.fill(heat, 0, 900, 10e3);
    Arrays.fill(heat, 900, 1800, 7e3);
    Estimate widened =
        HeatUnderWay.widen(new Estimate(8500, 100), heat, new SteadyFinder.Span(0, 1800), 1);

    assertThat(widened.value()).isEqualTo(8500);
    assertThat(widened.standard()).isCloseTo(175.6, within(0.1));
  }

  @Test
  void swingsInBetweenCancel() {
    double[] heat = new double[1800];
    for (int i = 0; i < heat.length; i++) {
      heat[i] = 8500 + 2000 * Math.sin(2 * Math.PI * i / 120.0);
    }
    Estimate widened =
        HeatUnderWay.widen(new Estimate(8500, 100), heat, new SteadyFinder.Span(0, 1800), 1);

    assertThat(widened.standard()).isCloseTo(100, within(0.1));
  }

  @Test
  void whatIsNotKnownWidensNothing() {
    double[] heat = new double[100];
    Arrays.fill(heat, Double.NaN);
    Estimate mean = new Estimate(8500, 100);

    assertThat(HeatUnderWay.widen(mean, heat, new SteadyFinder.Span(0, 100), 5)).isEqualTo(mean);
  }
}
