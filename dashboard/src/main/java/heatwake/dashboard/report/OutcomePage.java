package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Paragraph;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.dashboard.present.Figure;
import heatwake.dashboard.present.FigureRow;
import heatwake.dashboard.present.FigureRows;
import heatwake.dashboard.present.FlagRow;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.Names;
import heatwake.dashboard.present.Tone;
import heatwake.dashboard.present.UnitChoice;
import heatwake.dashboard.present.VerdictWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The first page: which site and run, the verdict, the figures, the flags with their next checks.
 */
final class OutcomePage {
  /** More would push the charts from the second page; the rest is named in one line. */
  private static final int MOST_FLAGS = 6;

  private final Blocks blocks;
  private final ReportFonts fonts;
  private final Recording recording;
  private final Findings findings;
  private final UnitChoice units;
  private final Moment moment;

  OutcomePage(
      Blocks blocks, Recording recording, Findings findings, UnitChoice units, Moment moment) {
    this.blocks = blocks;
    this.fonts = blocks.fonts();
    this.recording = recording;
    this.findings = findings;
    this.units = units;
    this.moment = moment;
  }

  void addTo(Document document) {
    Paragraph title = new Paragraph(recording.rig().site().name(), fonts.title());
    title.setLeading(22);
    title.setSpacingAfter(4);
    document.add(title);
    document.add(blocks.paragraph(what(), fonts.soft()));
    document.add(blocks.paragraph(plate(), fonts.soft()));
    document.add(verdict());
    figures(document);
    flags(document);
  }

  private String what() {
    return "Pool heat-pump report  ·  run "
        + findings.run()
        + "  ·  "
        + moment.spanWithYear(findings.startMs(), findings.endMs())
        + " ("
        + Moment.duration(findings.endMs() - findings.startMs())
        + ")  ·  times in "
        + moment.zoneAt(findings.startMs());
  }

  private String plate() {
    Heater heater = recording.rig().heater();
    Pool pool = recording.rig().pool();
    List<String> parts = new ArrayList<>();
    parts.add(heater.label());
    heater.refrigerant().ifPresent(one -> parts.add(one.designation()));
    heater.ratings().stream()
        .findFirst()
        .ifPresent(
            rating ->
                parts.add(
                    "nameplate "
                        + stated(Quantity.POWER, rating.heatW())
                        + " at air "
                        + stated(Quantity.TEMPERATURE, rating.airK())
                        + ", water "
                        + stated(Quantity.TEMPERATURE, rating.waterK())));
    pool.volumeM3()
        .ifPresent(volume -> parts.add("pool " + units.of(Quantity.VOLUME).text(volume)));
    pool.setpointK().ifPresent(set -> parts.add("set to " + stated(Quantity.TEMPERATURE, set)));
    return String.join("  ·  ", parts);
  }

  /** What the nameplate or a person stated has no more digits than that took. */
  private String stated(Quantity quantity, double si) {
    return Figure.stated(si, units.of(quantity).unit());
  }

  private PdfPTable verdict() {
    VerdictWords words = VerdictWords.of(findings.verdict());
    PdfPTable box = blocks.box(words.tone());
    PdfPCell cell = new PdfPCell(box.getDefaultCell());
    cell.addElement(blocks.paragraph(words.headline(), fonts.figure()));
    if (!words.sureness().isEmpty()) {
      cell.addElement(blocks.paragraph(words.sureness(), fonts.soft()));
    }
    words
        .because()
        .forEach(reason -> cell.addElement(blocks.paragraph("•  " + reason, fonts.text())));
    words
        .wouldDecide()
        .forEach(
            advice -> cell.addElement(blocks.paragraph("To be surer: " + advice, fonts.soft())));
    box.addCell(cell);
    return box;
  }

  private void figures(Document document) {
    List<FigureRow> run = FigureRows.ofRun(findings, units, moment);
    if (!run.isEmpty()) {
      document.add(blocks.heading("Figures of the run"));
      document.add(blocks.figures(run));
    }
    longestSteady()
        .ifPresent(
            span -> {
              document.add(
                  blocks.heading(
                      "Steady running, "
                          + moment.span(span.startMs(), span.endMs())
                          + longestOf(findings.steady().size())));
              document.add(pairs(FigureRows.ofSteady(span, findings, units)));
            });
  }

  private static String longestOf(int spans) {
    return spans > 1 ? " (the longest of " + spans + ")" : "";
  }

  private Optional<SteadySpan> longestSteady() {
    return findings.steady().stream()
        .max(Comparator.comparingLong(span -> span.endMs() - span.startMs()));
  }

  /** Figures without remarks, two to a line. */
  private PdfPTable pairs(List<FigureRow> rows) {
    PdfPTable table = blocks.table(34, 22, 3, 34, 22);
    int half = (rows.size() + 1) / 2;
    for (int i = 0; i < half; i++) {
      addFigure(table, rows.get(i));
      table.addCell(blocks.frame());
      if (half + i < rows.size()) {
        addFigure(table, rows.get(half + i));
      } else {
        table.addCell(blocks.frame());
        table.addCell(blocks.frame());
      }
    }
    return table;
  }

  private void addFigure(PdfPTable table, FigureRow row) {
    table.addCell(blocks.cell(row.name(), fonts.text()));
    table.addCell(blocks.cell(row.value(), fonts.strong()));
  }

  private void flags(Document document) {
    List<FlagRow> rows = FlagRow.of(findings, moment);
    document.add(blocks.heading(rows.isEmpty() ? "Flags: none" : "Flags"));
    for (FlagRow row : rows.subList(0, Math.min(MOST_FLAGS, rows.size()))) {
      document.add(flag(row));
    }
    if (rows.size() > MOST_FLAGS) {
      List<String> rest =
          rows.subList(MOST_FLAGS, rows.size()).stream()
              .map(row -> row.title() + ", " + row.when())
              .toList();
      document.add(blocks.paragraph("And: " + String.join("; ", rest), fonts.soft()));
    }
  }

  private PdfPTable flag(FlagRow row) {
    PdfPTable box =
        blocks.box(
            switch (row.severity()) {
              case ALARM -> Tone.ALARM;
              case WARNING -> Tone.WARNING;
              case INFO -> Tone.PLAIN;
            });
    box.setKeepTogether(true);
    PdfPCell cell = new PdfPCell(box.getDefaultCell());
    cell.setPadding(5);
    cell.setPaddingLeft(8);
    cell.addElement(
        blocks.paragraph(
            row.title()
                + "  ·  "
                + Names.of(row.severity()).toLowerCase(java.util.Locale.ROOT)
                + "  ·  "
                + row.when(),
            fonts.strong()));
    cell.addElement(blocks.paragraph(row.evidence(), fonts.text()));
    row.consequences().forEach(one -> cell.addElement(blocks.paragraph(one, fonts.text())));
    if (!row.causes().isEmpty()) {
      cell.addElement(blocks.paragraph(row.causes(), fonts.soft()));
    }
    cell.addElement(blocks.paragraph("Next check: " + row.flag().nextCheck(), fonts.text()));
    box.addCell(cell);
    return box;
  }
}
