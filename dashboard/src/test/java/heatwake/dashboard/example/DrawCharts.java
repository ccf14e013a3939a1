package heatwake.dashboard.example;

import heatwake.dashboard.chart.ChartPicture;
import heatwake.dashboard.chart.ChartStyle;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.nio.file.Path;
import java.time.ZoneId;

/** Draws the invented night's charts into the folder given, to be looked at. */
final class DrawCharts {
  private DrawCharts() {}

  public static void main(String[] arguments) {
    Path folder = Path.of(arguments[0]);
    RunCharts charts =
        RunCharts.of(
            InventedNight.recording(),
            InventedNight.findings(),
            UnitChoice.METRIC,
            new Moment(ZoneId.of("Europe/Berlin")));
    for (int i = 0; i < 3; i++) {
      long start = System.nanoTime();
      ChartPicture.writePng(
          folder.resolve("stack.png"),
          charts.stack(charts.strips(), charts.whole(), ChartStyle.SCREEN),
          1200,
          1400);
      System.out.println("stack " + (System.nanoTime() - start) / 1000000 + " ms");
    }
    ChartPicture.writePng(
        folder.resolve("one.png"),
        charts.chart(charts.strips().get(0), charts.whole(), ChartStyle.SCREEN),
        900,
        320);
  }
}
