package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ValueAxisTest {
  @Test
  void endsAreRound() {
    ValueAxis axis = ValueAxis.holding(26.31, 29.2, 2);
    assertThat(axis).isEqualTo(new ValueAxis(26, 30, 1));
    assertThat(IntStream.rangeClosed(0, axis.steps()).mapToObj(i -> axis.label(i, 1)))
        .containsExactly("26", "27", "28", "29", "30");
  }

  @Test
  void labelsHaveTheDecimalsOfTheStep() {
    ValueAxis axis = ValueAxis.holding(0.1, 1.7, 1);
    assertThat(IntStream.rangeClosed(0, axis.steps()).mapToObj(i -> axis.label(i, 1)))
        .containsExactly("0.0", "0.5", "1.0", "1.5", "2.0");
  }

  @Test
  void aLabelHasNoDecimalThatEveryWrittenMarkLacks() {
    ValueAxis axis = new ValueAxis(26, 29, 0.5);
    assertThat(axis.label(2, 2)).isEqualTo("27");
    assertThat(axis.label(1, 1)).isEqualTo("26.5");
    assertThat(new ValueAxis(0, 0.1, 0.02).label(1, 1)).isEqualTo("0.02");
  }

  /** A label that was rounded would put the curve in the wrong place. */
  @Test
  void everyLabelIsItsMarksValue() {
    Random random = new Random(2);
    for (int n = 0; n < 2000; n++) {
      double least = 1000 * random.nextGaussian() * Math.pow(10, -random.nextInt(6));
      double length = Math.pow(10, 3 - random.nextInt(6)) * random.nextDouble();
      ValueAxis axis = ValueAxis.holding(least, least + length, 1e-3);
      for (int every = 1; every <= 4; every++) {
        for (int i = axis.firstWritten(every); i <= axis.steps(); i += every) {
          double read = Double.parseDouble(axis.label(i, every).replace('−', '-'));
          assertThat(read).isCloseTo(axis.mark(i), within(1e-3 * axis.step()));
        }
      }
    }
  }

  @Test
  void noiseIsNotBlownUp() {
    ValueAxis axis = ValueAxis.holding(27.49, 27.51, 2);
    assertThat(axis.high() - axis.low()).isBetween(2.0, 4.0);
  }

  @Test
  void doesNotJitterWithNoise() {
    Random random = new Random(1);
    ValueAxis first = ValueAxis.holding(26.4, 29.3, 2);
    for (int i = 0; i < 1000; i++) {
      assertThat(
              ValueAxis.holding(
                  26.4 + 0.1 * random.nextDouble(), 29.3 + 0.1 * random.nextDouble(), 2))
          .isEqualTo(first);
    }
  }

  @Test
  void magnitudesNearNothingStartAtZero() {
    assertThat(ValueAxis.holding(0.4, 3, 20).low()).isZero();
    assertThat(ValueAxis.holding(-0.02, 15, 2).low()).isZero();
  }

  @Test
  void negativeValuesAreShown() {
    assertThat(ValueAxis.holding(-3.2, 15, 2).low()).isLessThanOrEqualTo(-3.2);
  }

  @Test
  void withoutValuesThereIsStillAnAxis() {
    ValueAxis axis = ValueAxis.holding(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 2);
    assertThat(axis.low()).isZero();
    assertThat(axis.high()).isGreaterThanOrEqualTo(2);
  }

  @Test
  void percentIsAlwaysWhole() {
    assertThat(ValueAxis.percent()).isEqualTo(new ValueAxis(0, 100, 25));
  }
}
