package heatwake.analysis.electric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Courses worked out by hand, and what must hold of every one. */
class TautStringTest {
  @Test
  void isStraightWhereTheGatesLetIt() {
    TautString line =
        TautString.through(
            new double[] {0, 1, 2, 3}, new double[] {0, 0, 1, 2}, new double[] {1, 2, 3, 3});
    // From 0.5 to 2.5 in three steps: 1.17 and 1.83 lie within the gates between.
    assertThat(line.size()).isEqualTo(2);
    assertThat(line.height(1)).isCloseTo(2.5, within(1e-12));
  }

  @Test
  void bendsAroundPosts() {
    // Rest, then two a step: the line stays below the posts at 1, reached at gate 2.
    TautString line =
        TautString.through(
            new double[] {0, 1, 2, 3, 4, 5},
            new double[] {0, 0, 0, 2, 4, 6},
            new double[] {1, 1, 1, 3, 5, 7});
    assertThat(line.size()).isEqualTo(3);
    assertThat(line.gate(1)).isEqualTo(2);
    assertThat(line.height(1)).isCloseTo(1, within(1e-12));
  }

  @Test
  void keepsWithinEveryGateAndTakesNoWayAround() {
    Random random = new Random(17);
    for (int run = 0; run < 300; run++) {
      int n = 2 + random.nextInt(60);
      double[] at = new double[n];
      double[] low = new double[n];
      double[] high = new double[n];
      double total = 0;
      for (int i = 0; i < n; i++) {
        at[i] = i == 0 ? 0 : at[i - 1] + 0.1 + random.nextDouble();
        total += random.nextInt(3) * random.nextDouble();
        low[i] = Math.floor(total);
        high[i] = low[i] + 1;
      }
      check(TautString.through(at, low, high), at, low, high);
    }
  }

  private static void check(TautString line, double[] at, double[] low, double[] high) {
    for (int k = 0; k + 1 < line.size(); k++) {
      int from = line.gate(k);
      int to = line.gate(k + 1);
      double slope = (line.height(k + 1) - line.height(k)) / (at[to] - at[from]);
      for (int i = from; i <= to; i++) {
        double height = line.height(k) + slope * (at[i] - at[from]);
        assertThat(height).isBetween(low[i] - 1e-9, high[i] + 1e-9);
      }
      if (k > 0) {
        double before = (line.height(k) - line.height(k - 1)) / (at[from] - at[line.gate(k - 1)]);
        // A shortest line turns up only at an upper post, down only at a lower one.
        double post = slope > before ? high[from] : low[from];
        assertThat(line.height(k)).isCloseTo(post, within(1e-9));
      }
    }
    assertThat(line.gate(line.size() - 1)).isEqualTo(at.length - 1);
  }
}
