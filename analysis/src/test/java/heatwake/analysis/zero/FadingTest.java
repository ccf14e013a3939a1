package heatwake.analysis.zero;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rests at 5 s, the outlet coming down from a rise of 3 K. */
class FadingTest {
  private static final double STEP_S = 5;
  private static final double OFFSET_K = -0.2;

  private static Fading rest(double minutes, double fadesInS, double noiseK) {
    Random random = new Random(7);
    double[] differenceK = new double[(int) (minutes * 60 / STEP_S)];
    for (int i = 0; i < differenceK.length; i++) {
      differenceK[i] =
          OFFSET_K + 3 * Math.exp(-i * STEP_S / fadesInS) + noiseK * random.nextGaussian();
    }
    return Fading.of(differenceK, 0, differenceK.length);
  }

  @Test
  void aShortRestEndsBeforeItsHeatHasGone() {
    assertThat(rest(4.5, 200, 0.05).goesOn()).isTrue();
    assertThat(rest(15, 300, 0.03).goesOn()).isTrue();
  }

  @Test
  void aRestThatHasSettledGivesAZero() {
    assertThat(rest(12, 30, 0.03).goesOn()).isFalse();
    assertThat(rest(5, 30, 0.03).goesOn()).isFalse();
    assertThat(rest(20, 120, 0.05).goesOn()).isFalse();
  }

  @Test
  void noiseAloneIsNoFall() {
    assertThat(rest(5, 1, 0.15).goesOn()).isFalse();
  }
}
