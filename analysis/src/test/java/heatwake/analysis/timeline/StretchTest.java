package heatwake.analysis.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class StretchTest {
  private static final double NAN = Double.NaN;

  /** By hand: of 1, 5 and 9 in the middle stands 5; of two it is halfway. */
  @Test
  void theMiddleIsTheMedianOfWhatIsKnown() {
    double[] values = {100, 9, NAN, 1, 5, 100};
    assertThat(new Stretch(1, 5).middle(values)).isEqualTo(5);
    assertThat(new Stretch(1, 4).middle(values)).isEqualTo(5);
  }

  @Test
  void nothingKnownHasNoMiddle() {
    assertThat(new Stretch(0, 2).middle(new double[] {NAN, NAN})).isNaN();
    assertThat(new Stretch(1, 1).middle(new double[] {1, 2})).isNaN();
  }
}
