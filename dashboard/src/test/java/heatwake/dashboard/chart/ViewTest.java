package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ViewTest {
  private static final TimeRange RUN = new TimeRange(0, 36_000_000);
  private static final TimeRange LATER = new TimeRange(0, 40_000_000);

  @Test
  void theWholeRunGrowsWithIt() {
    assertThat(new View.Whole().of(LATER)).isEqualTo(LATER);
  }

  @Test
  void theLatestStretchFollowsTheRun() {
    View hour = new View.Latest(3_600_000);
    assertThat(hour.of(RUN)).isEqualTo(new TimeRange(32_400_000, 36_000_000));
    assertThat(hour.of(LATER)).isEqualTo(new TimeRange(36_400_000, 40_000_000));
  }

  @Test
  void aFixedStretchStays() {
    View fixed = View.fixed(new TimeRange(1_000_000, 2_000_000), RUN);
    assertThat(fixed.of(LATER)).isEqualTo(new TimeRange(1_000_000, 2_000_000));
  }

  @Test
  void whatReachesBeyondTheRunIsMovedIntoIt() {
    assertThat(View.fixed(new TimeRange(-500_000, 500_000), RUN).of(RUN))
        .isEqualTo(new TimeRange(0, 1_000_000));
    assertThat(View.fixed(new TimeRange(-1, 50_000_000), RUN)).isEqualTo(new View.Whole());
  }

  @Test
  void aSpanStandsInTheMiddleThird() {
    assertThat(View.around(10_000_000, 13_000_000, RUN).of(RUN))
        .isEqualTo(new TimeRange(7_000_000, 16_000_000));
  }

  @Test
  void zoomingKeepsTheMomentInItsPlace() {
    TimeRange closer = RUN.scaledAround(9_000_000, 0.5);
    assertThat(closer.shareAt(9_000_000)).isEqualTo(RUN.shareAt(9_000_000));
    assertThat(closer.lengthMs()).isEqualTo(18_000_000);
    assertThat(RUN.scaledAround(9_000_000, 1e-9).lengthMs()).isEqualTo(TimeRange.SHORTEST_MS);
  }

  @Test
  void aRangeHasALength() {
    assertThatThrownBy(() -> new TimeRange(5, 5)).isInstanceOf(IllegalArgumentException.class);
    assertThat(TimeRange.between(5, 5).lengthMs()).isEqualTo(TimeRange.SHORTEST_MS);
  }
}
