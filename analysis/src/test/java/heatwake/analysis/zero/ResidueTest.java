package heatwake.analysis.zero;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against the numerical mean of heat that fades by Newton's law of cooling. */
class ResidueTest {
  /** 5 kJ/K of metal, 8 K off, fading over 150 s into 100 L/min of water (4.17e6 J/(m3 K)). */
  private static double byNewtonK(double fromS, double toS) {
    double capacityWPerK = 4.17e6 * 0.1 / 60;
    double sum = 0;
    int steps = 10_000;
    for (int i = 0; i < steps; i++) {
      double atS = fromS + (i + 0.5) * (toS - fromS) / steps;
      sum += 5000 * 8 / 150.0 * Math.exp(-atS / 150) / capacityWPerK;
    }
    return sum / steps;
  }

  @Test
  void isTheMeanOfWhatFades() {
    for (double[] stretch : new double[][] {{0, 60}, {70, 160}, {180, 240}, {60, 600}}) {
      double share = byNewtonK(stretch[0], stretch[1]) / byNewtonK(0, 1e-6);
      assertThat(Residue.meanK(stretch[0], stretch[1])).isCloseTo(0.04 * share, within(1e-6));
    }
    // The size is of that order: hundredths of a kelvin.
    assertThat(byNewtonK(0, 1e-6)).isBetween(0.02, 0.08);
  }

  @Test
  void isGoneAfterAQuarterOfAnHour() {
    assertThat(Residue.meanK(900, 1500)).isLessThan(1e-4);
    assertThat(Residue.meanK(900, 900)).isLessThan(1e-4);
  }
}
