package heatwake.dashboard.demo;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.RunHeading;
import heatwake.collector.store.Store;
import heatwake.dashboard.chart.ChartPicture;
import heatwake.dashboard.chart.ChartStyle;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.chart.Strip;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import heatwake.dashboard.report.ReportPdf;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The folder in which the demo leaves what it made. */
public final class DemoFolder {
  private static final int PICTURE_WIDTH = 1200;
  private static final int PICTURE_HEIGHT = 340;
  private static final int OVERVIEW_HEIGHT = 150;

  private final Path folder;

  /**
   * Takes a folder, and makes it if need be.
   *
   * @throws MistakeException if it cannot be made or written
   */
  public DemoFolder(Path folder) {
    this.folder = folder;
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new MistakeException("--out " + folder + " is a file; name a folder");
    }
    try {
      Files.createDirectories(folder);
    } catch (IOException fault) {
      throw new MistakeException(
          "--out " + folder + " cannot be made; name a folder that you may write", fault);
    }
    if (!Files.isWritable(folder)) {
      throw new MistakeException(
          "--out " + folder + " cannot be written; name a folder that you may write");
    }
    refuseWhatIsNotOurs();
  }

  /** Refuses to write over anything that an earlier demo has not left here. */
  private void refuseWhatIsNotOurs() {
    refuseRunsThatAreNotOurs();
    if (isOfTheDemo(rig())) {
      return;
    }
    List<Path> inTheWay = new ArrayList<>(List.of(rig(), database()));
    inTheWay.add(folder.resolve("report.pdf"));
    inTheWay.add(folder.resolve("overview.png"));
    for (Strip strip : Strip.values()) {
      inTheWay.add(picture(strip));
    }
    for (Path file : inTheWay) {
      if (Files.exists(file)) {
        throw new MistakeException(
            file + " is not the demo's, which would write over it; name another folder with --out");
      }
    }
  }

  /** Refuses to record among the runs of other sites. */
  private void refuseRunsThatAreNotOurs() {
    if (!Files.exists(database())) {
      return;
    }
    try (Store store = Store.openExisting(database())) {
      for (RunHeading run : store.runHeadings()) {
        if (!store.rigText(run.id()).startsWith(RigText.FIRST_WORDS)) {
          throw new MistakeException(
              database()
                  + " holds run "
                  + run.id()
                  + " of "
                  + run.site()
                  + ", which is not the demo's; name another folder with --out");
        }
      }
    }
  }

  private static boolean isOfTheDemo(Path rig) {
    try (Stream<String> lines = Files.lines(rig)) {
      return lines.findFirst().filter(line -> line.startsWith(RigText.FIRST_WORDS)).isPresent();
    } catch (IOException | UncheckedIOException absentOrOther) {
      return false;
    }
  }

  /** The database, which may hold earlier runs of the demo. */
  public Path database() {
    return folder.resolve("heatwake.db");
  }

  Path rig() {
    return folder.resolve("rig.toml");
  }

  /** Writes report and charts of a run, and returns the files written. */
  public List<Path> write(Recording recording, Findings findings, UnitChoice units, Moment moment)
      throws IOException {
    List<Path> written = new ArrayList<>();
    Path report = folder.resolve("report.pdf");
    new ReportPdf(recording, findings, units, moment).writeTo(report);
    written.add(report);
    RunCharts charts = RunCharts.of(recording, findings, units, moment);
    Path overview = folder.resolve("overview.png");
    int height = OVERVIEW_HEIGHT * (charts.strips().size() + 1);
    ChartPicture.writePng(
        overview,
        charts.stack(charts.strips(), charts.whole(), ChartStyle.SCREEN),
        PICTURE_WIDTH,
        height);
    written.add(overview);
    for (Strip strip : charts.strips()) {
      Path picture = picture(strip);
      ChartPicture.writePng(
          picture,
          charts.chart(strip, charts.whole(), ChartStyle.SCREEN),
          PICTURE_WIDTH,
          PICTURE_HEIGHT);
      written.add(picture);
    }
    return written;
  }

  private Path picture(Strip strip) {
    return folder.resolve(strip.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".png");
  }
}
