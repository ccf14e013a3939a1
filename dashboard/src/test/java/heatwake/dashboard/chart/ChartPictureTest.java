package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartPictureTest {
  private static final RunCharts CHARTS =
      RunCharts.of(
          InventedNight.recording(),
          InventedNight.findings(),
          UnitChoice.METRIC,
          new Moment(ZoneOffset.UTC));

  @Test
  void everyStripWithSomethingToShowIsOffered() {
    assertThat(CHARTS.strips())
        .containsExactly(
            Strip.WATER,
            Strip.RISE,
            Strip.HEAT,
            Strip.FLOW,
            Strip.SHARE,
            Strip.REFRIGERANT_PRESSURE,
            Strip.REFRIGERANT_TEMPERATURE,
            Strip.AIR,
            Strip.CURRENT,
            Strip.STATES);
  }

  @Test
  void aStripHoldsItsLinesColoursWherePowerRan() {
    BufferedImage picture =
        ChartPicture.of(CHARTS.chart(Strip.HEAT, CHARTS.whole(), ChartStyle.SCREEN), 1000, 300, 1);
    assertThat(colours(picture))
        .contains(
            Line.of(heatwake.analysis.quantity.Channel.POWER).color(),
            Line.of(heatwake.analysis.finding.Trace.Kind.HEAT).color());
  }

  /** Between 00:20 and 00:50 nothing was recorded. */
  @Test
  void nothingIsDrawnWhereNothingWasRecorded() {
    StripStack stack =
        CHARTS.chart(
            Strip.WATER,
            new TimeRange(InventedNight.minute(383), InventedNight.minute(407)),
            ChartStyle.SCREEN);
    BufferedImage picture = ChartPicture.of(stack, 1000, 300, 1);
    assertThat(colours(picture.getSubimage(120, 100, 800, 150)))
        .doesNotContain(
            Line.of(heatwake.analysis.quantity.Channel.WATER_IN).color(),
            Line.of(heatwake.analysis.quantity.Channel.WATER_OUT).color());
  }

  @Test
  void theTimeUnderThePointerIsTheTimePainted() {
    StripStack stack = CHARTS.stack(CHARTS.strips(), CHARTS.whole(), ChartStyle.SCREEN);
    StackLayout layout = StackLayout.of(stack, 1000, 800);
    assertThat(stack.timeAt(1000, layout.band().x)).isEqualTo(CHARTS.whole().fromMs());
    assertThat(stack.timeAt(1000, layout.band().x + layout.band().width))
        .isEqualTo(CHARTS.whole().toMs());
  }

  @Test
  void aFlagIsFoundByItsBar() {
    StripStack stack = CHARTS.stack(CHARTS.strips(), CHARTS.whole(), ChartStyle.SCREEN);
    StackLayout layout = StackLayout.of(stack, 1000, 800);
    int x = (int) layout.x(InventedNight.minute(440), stack.range());
    assertThat(stack.flagAt(1000, 800, x, layout.flags().y + 2))
        .hasValueSatisfying(flag -> assertThat(flag.rule()).isEqualTo("short-cycling"));
    assertThat(stack.flagAt(1000, 800, x, layout.axis().y)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1600, 1000", "640, 360", "120, 90", "81, 81"})
  void paintsAtAnySize(int width, int height) {
    StripStack stack = CHARTS.stack(CHARTS.strips(), CHARTS.whole(), ChartStyle.SCREEN);
    BufferedImage picture = ChartPicture.of(stack, width, height, 1);
    assertThat(picture.getWidth()).isEqualTo(width);
  }

  @Test
  void writesAPictureThatCanBeRead(@TempDir Path folder) throws java.io.IOException {
    Path file = folder.resolve("water.png");
    ChartPicture.writePng(
        file, CHARTS.chart(Strip.WATER, CHARTS.whole(), ChartStyle.SCREEN), 800, 300);
    BufferedImage read = ImageIO.read(file.toFile());
    assertThat(List.of(read.getWidth(), read.getHeight())).containsExactly(800, 300);
  }

  private static Set<Color> colours(BufferedImage picture) {
    return IntStream.range(0, picture.getWidth() * picture.getHeight())
        .map(i -> picture.getRGB(i % picture.getWidth(), i / picture.getWidth()))
        .distinct()
        .mapToObj(Color::new)
        .collect(Collectors.toSet());
  }
}
