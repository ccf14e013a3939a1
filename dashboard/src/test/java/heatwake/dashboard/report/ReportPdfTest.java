package heatwake.dashboard.report;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.present.Cautions;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Read back with another PDF library. */
class ReportPdfTest {
  @TempDir Path folder;

  private String textOf(Recording recording, Findings findings, int mostPages) throws IOException {
    Path file = folder.resolve("report.pdf");
    new ReportPdf(recording, findings, UnitChoice.METRIC, new Moment(ZoneOffset.UTC)).writeTo(file);
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      assertThat(document.getNumberOfPages()).isBetween(1, mostPages);
      // Lines are wrapped; what is read back is compared word by word.
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  @Test
  void holdsSiteFiguresFlagsNextChecksAndCautions() throws IOException {
    Findings findings = InventedNight.findings();

    String text = textOf(InventedNight.recording(), findings, 3);

    assertThat(text)
        .contains("Heron Lane", "k = 2", "±", "4 May 2031 18:00 to 5 May 2031 06:00 (12 h)")
        .containsPattern("nameplate 16\\.5 kW at air 27 °C, water 27 °C .* set to 28 °C");
    assertThat(findings.flags())
        .isNotEmpty()
        .allSatisfy(flag -> assertThat(text).contains(flag.evidence(), flag.nextCheck()));
    assertThat(Cautions.all()).allSatisfy(caution -> assertThat(text).contains(caution));
  }

  @Test
  void aTroubledNightHasAllItsCyclesOnOnePage() throws IOException {
    String text = textOf(InventedNight.recording(), InventedNight.withCycles(60), 4);

    assertThat(text)
        .contains(
            "Compressor: 60 cycles; the compressor ran",
            "Heat, kWh",
            "2 4 May 18:12 to 18:22 10 min 2.50 ± 0.11 0.500 ± 0.006 5.0 ± 0.2",
            "60 since 5 May 05:48");
  }

  /** What does not fit below the flags stands above the start-up list. */
  @Test
  void aFewCyclesTakeNoPageOfTheirOwn() throws IOException {
    for (int cycles = 1; cycles <= 20; cycles++) {
      Path file = folder.resolve("report.pdf");
      String heading = "Compressor: " + cycles;
      new ReportPdf(
              InventedNight.recording(),
              InventedNight.withCycles(cycles),
              UnitChoice.METRIC,
              new Moment(ZoneOffset.UTC))
          .writeTo(file);

      assertThat(pagesOf(file))
          .as("%d cycles", cycles)
          .filteredOn(page -> page.contains(heading))
          .singleElement()
          .asString()
          .containsPattern("Flags|Start-up list");
    }
  }

  private static List<String> pagesOf(Path file) throws IOException {
    List<String> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(stripper.getText(document));
      }
    }
    return pages;
  }

  @Test
  void moreCyclesThanAPageHoldsAreCounted() throws IOException {
    String text = textOf(InventedNight.recording(), InventedNight.withCycles(70), 4);

    assertThat(text)
        .contains(
            "60 5 May 05:48 to 05:58", "And 10 more; heatwake analyse --json lists them all.");
  }

  /**
   * However many notes stand above them: a page's end falls into the cautions with some of these.
   */
  @Test
  void cautionsAndSignatureStayOnOnePage() throws IOException {
    for (int notes = 0; notes < 60; notes += 2) {
      String closing = lastPageOf(withNotes(notes));

      assertThat(Cautions.all())
          .as("%d notes", notes)
          .allSatisfy(caution -> assertThat(closing).contains(caution));
      assertThat(closing).contains("Technician", "Customer", "Date");
    }
  }

  private static Recording withNotes(int count) {
    Recording night = InventedNight.recording();
    List<Note> notes =
        IntStream.range(0, count)
            .mapToObj(i -> new Note(night.startMs() + i * 60_000L, "looked at the strainer"))
            .toList();
    return new Recording(
        night.run(),
        night.rig(),
        night.startMs(),
        night.endMs(),
        night.series(),
        night.events(),
        notes);
  }

  private String lastPageOf(Recording recording) throws IOException {
    Path file = folder.resolve("report.pdf");
    new ReportPdf(
            recording, InventedNight.findings(), UnitChoice.METRIC, new Moment(ZoneOffset.UTC))
        .writeTo(file);
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(document.getNumberOfPages());
      return stripper.getText(document).replaceAll("\\s+", " ");
    }
  }

  @Test
  void showsForeignTextAsTyped() throws IOException {
    Recording night = InventedNight.recording();
    Rig rig = night.rig();
    Recording foreign =
        new Recording(
            night.run(),
            new Rig(
                new Site("Ποτάμι Ручей <b>", 0),
                rig.pool(),
                rig.tariff(),
                rig.pumpCurve(),
                rig.heater(),
                rig.probes()),
            night.startMs(),
            night.endMs(),
            night.series(),
            List.of(),
            List.of(new Note(night.startMs(), "=1+1 <script> (naïve)")));

    assertThat(textOf(foreign, InventedNight.findings(), 3))
        .contains("Ποτάμι Ручей <b>", "=1+1 <script> (naïve)");
  }

  @Test
  void runWithoutReadingsStillHasAReport() throws IOException {
    Recording night = InventedNight.recording();
    Recording nothing =
        new Recording(
            1, night.rig(), night.startMs(), night.endMs(), Map.of(), List.of(), List.of());

    assertThat(textOf(nothing, heatwake.analysis.Analysis.of(nothing), 3))
        .contains("Not known, and what to clip or state for it");
  }

  @Test
  void leavesNoDraftBehind() throws IOException {
    textOf(InventedNight.recording(), InventedNight.findings(), 3);

    try (var files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString())).containsExactly("report.pdf");
    }
  }
}
