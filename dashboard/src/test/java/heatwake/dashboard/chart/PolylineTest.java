package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Series;
import heatwake.dashboard.present.UnitChoice;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class PolylineTest {
  private static final long START = 1_935_684_000_000L;

  @Test
  void neverMoreThanTwoPointsAColumnAndNoSpikeLost() {
    Series.Builder readings = Series.of(Channel.POWER);
    for (int i = 0; i < 50_000; i++) {
      readings.add(START + i * 1000L, i == 33_333 ? 9000 : i == 7777 ? -30 : 2700 + i % 7);
    }
    Polyline line = thin(readings.build(), new TimeRange(START, START + 50_000_000L), 800);
    assertThat(line.x().length).isLessThanOrEqualTo(2 * 802);
    assertThat(line.greatest()).isEqualTo(9.0);
    assertThat(line.least()).isEqualTo(-0.03);
    assertThat(DoubleStream.of(line.y()).max()).hasValue(9.0);
    assertThat(DoubleStream.of(line.y()).min()).hasValue(-0.03);
    assertThat(line.x()).isSorted();
  }

  @Test
  void aGapIsAGap() {
    Series.Builder readings = Series.of(Channel.POWER);
    for (int i = 0; i < 100; i++) {
      if (i < 40 || i > 60) {
        readings.add(START + i * 1000L, 2700);
      }
    }
    Polyline line = thin(readings.build(), new TimeRange(START, START + 100_000), 1000);
    assertThat(breaks(line)).isEqualTo(1);
  }

  @Test
  void oneReadingMissedIsBridged() {
    Series.Builder readings = Series.of(Channel.POWER);
    for (int i = 0; i < 100; i++) {
      if (i != 40) {
        readings.add(START + i * 1000L, 2700);
      }
    }
    Polyline line = thin(readings.build(), new TimeRange(START, START + 100_000), 1000);
    assertThat(breaks(line)).isZero();
  }

  @Test
  void aReadingThatCannotBeTrueIsNotDrawn() {
    Series readings =
        Series.of(Channel.WATER_IN)
            .add(START, 300)
            .add(START + 1000, 300.1)
            .add(START + 2000, 273.15 + 850)
            .add(START + 3000, 300.2)
            .build();
    Polyline line = thin(readings, new TimeRange(START, START + 3000), 100);
    assertThat(line.greatest()).isLessThan(28);
    assertThat(breaks(line)).isEqualTo(1);
  }

  @Test
  void aLoneReadingIsADashOneColumnWide() {
    Series readings = Series.of(Channel.POWER).add(START + 5000, 2700).build();
    Polyline line = thin(readings, new TimeRange(START, START + 10_000), 100);
    assertThat(line.x()).containsExactly(5000, 5100);
  }

  @Test
  void reachesTheEdgesFromReadingsJustOutside() {
    Series readings =
        Series.of(Channel.POWER)
            .add(START, 0)
            .add(START + 1000, 1000)
            .add(START + 2000, 2000)
            .add(START + 3000, 3000)
            .build();
    Polyline line = thin(readings, new TimeRange(START + 500, START + 2500), 100);
    assertThat(line.x()).containsExactly(-500, 500, 1500, 2500);
    assertThat(line.least()).isEqualTo(1);
    assertThat(line.greatest()).isEqualTo(2);
  }

  @Test
  void whatIsNotKnownInATraceBreaksIt() {
    double[] values = new double[60];
    Arrays.fill(values, 15_000);
    Arrays.fill(values, 20, 30, Double.NaN);
    Samples samples =
        Samples.of(
            new Trace(Trace.Kind.HEAT, START, 1000, values), UnitChoice.METRIC.of(Trace.Kind.HEAT));
    Polyline line = Polyline.of(samples, new TimeRange(START, START + 60_000), 600);
    assertThat(breaks(line)).isEqualTo(1);
    assertThat(line.greatest()).isEqualTo(15);
  }

  @Test
  void nothingInRangeIsEmpty() {
    Series readings = Series.of(Channel.POWER).add(START, 2700).build();
    assertThat(thin(readings, new TimeRange(START + 60_000, START + 70_000), 100).isEmpty())
        .isTrue();
  }

  private static Polyline thin(Series series, TimeRange range, int columns) {
    return Polyline.of(Samples.of(series, UnitChoice.METRIC.of(series.channel())), range, columns);
  }

  private static long breaks(Polyline line) {
    return DoubleStream.of(line.y()).filter(Double::isNaN).count();
  }
}
