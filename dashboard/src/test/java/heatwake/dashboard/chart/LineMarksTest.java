package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LineMarksTest {
  private static final Line IN = Line.of(Channel.WATER_IN);
  private static final Line OUT = Line.of(Channel.WATER_OUT);
  private static final long LENGTH_MS = 100_000;

  /** A line with a point every second, broken between 40 and 60 s. */
  private static final Polyline BROKEN =
      new Polyline(
          IntStream.range(0, 100).mapToDouble(i -> i * 1000).toArray(),
          IntStream.range(0, 100).mapToDouble(i -> i > 40 && i < 60 ? Double.NaN : 1).toArray(),
          1,
          1);

  private static int[] places(ChartStyle style, Line line, List<Line> lines) {
    return new LineMarks(lines, style).placesOn(line, BROKEN, LENGTH_MS);
  }

  @Test
  void linesOfAStripAreMarkedBesideOneAnotherAndNotInAGap() {
    assertThat(places(ChartStyle.PRINT, IN, List.of(IN, OUT))).containsExactly(5, 25, 65, 85);
    assertThat(places(ChartStyle.PRINT, OUT, List.of(IN, OUT))).containsExactly(15, 35, 75, 95);
  }

  @Test
  void aLineAloneADashedOneAndTheScreenNeedNone() {
    Line promised = new Line.OfExpectedHeat();
    List<Line> heat = List.of(Line.of(Trace.Kind.HEAT), promised);
    assertThat(places(ChartStyle.PRINT, IN, List.of(IN))).isEmpty();
    assertThat(places(ChartStyle.PRINT, promised, heat)).isEmpty();
    assertThat(places(ChartStyle.SCREEN, IN, List.of(IN, OUT))).isEmpty();
  }

  /** What only colour parted is parted in grey: the two marks differ, and a picture holds both. */
  @Test
  void aMarkIsTakenForNoOther() {
    Set<List<Integer>> marks = new HashSet<>();
    List<Line> lines = List.of(IN, OUT, Line.of(Channel.WATER_RETURN), Line.of(Channel.WATER_POOL));
    for (Line line : lines) {
      BufferedImage picture = new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB);
      var g = picture.createGraphics();
      g.setColor(Color.BLACK);
      new LineMarks(lines, ChartStyle.PRINT).paint(g, line, 10, 10);
      g.dispose();
      marks.add(
          IntStream.range(0, 400)
              .map(i -> (picture.getRGB(i % 20, i / 20) & 0xFFFFFF) == 0 ? 0 : 1)
              .boxed()
              .toList());
    }
    assertThat(marks).hasSize(lines.size());
  }

  @Test
  void marksStandInWhatIsPrinted() {
    RunCharts charts =
        RunCharts.of(
            InventedNight.recording(),
            InventedNight.findings(),
            UnitChoice.METRIC,
            new Moment(ZoneOffset.UTC));
    ChartStyle unmarked = new ChartStyle(7f, 0.7f, 2, 0);
    BufferedImage with =
        ChartPicture.of(charts.chart(Strip.WATER, charts.whole(), ChartStyle.PRINT), 500, 150, 1);
    BufferedImage without =
        ChartPicture.of(charts.chart(Strip.WATER, charts.whole(), unmarked), 500, 150, 1);
    assertThat(IntStream.range(0, 500 * 150))
        .anyMatch(i -> with.getRGB(i % 500, i / 500) != without.getRGB(i % 500, i / 500));
  }
}
