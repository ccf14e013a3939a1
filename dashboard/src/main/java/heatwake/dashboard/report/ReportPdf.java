package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfWriter;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.output.WholeFile;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;

/**
 * Writes the report of a run: what was found and on whose side it is, the figures with their
 * uncertainties, the charts, and how it was measured.
 */
public final class ReportPdf {
  private static final float MARGIN = 42;
  private static final float FOOT = 48;

  private final Recording recording;
  private final Findings findings;
  private final UnitChoice units;
  private final Moment moment;

  /** Takes a run and what was found in it. */
  public ReportPdf(Recording recording, Findings findings, UnitChoice units, Moment moment) {
    this.recording = recording;
    this.findings = units.worded(findings);
    this.units = units;
    this.moment = moment;
  }

  /**
   * Writes the report to a file. An old file of that name is replaced only once the new one is
   * whole.
   *
   * @throws IOException if the file cannot be written
   */
  public void writeTo(Path file) throws IOException {
    WholeFile.write(file, this::write);
  }

  /** Writes the report. */
  public void write(OutputStream out) throws IOException {
    ReportFonts fonts = new ReportFonts();
    Blocks blocks = new Blocks(fonts);
    Document document = new Document(PageSize.A4, MARGIN, MARGIN, MARGIN, FOOT);
    PdfWriter writer = PdfWriter.getInstance(document, out);
    String site = recording.rig().site().name();
    document.addTitle("Heat-pump report: " + site + ", run " + findings.run());
    document.addCreator("Heatwake");
    writer.setPageEvent(
        new PageFoot(
            site
                + ", run "
                + findings.run()
                + "  ·  ± holds in about 95 of 100 cases (k = 2)  ·  local codes and licensed practice"
                + " have the last word",
            fonts));
    document.open();
    CycleTable cycles = new CycleTable(blocks, findings, units, moment);
    new OutcomePage(blocks, recording, findings, units, moment).addTo(document);
    boolean isBelow = cycles.fitsBelow(document, writer);
    if (isBelow) {
      cycles.addTo(document);
    }
    new ChartPage(blocks, recording, findings, units, moment).addTo(document, writer);
    document.newPage();
    if (!isBelow) {
      cycles.addTo(document);
      if (!cycles.isShort()) {
        document.newPage();
      }
    }
    new MeasurementPage(blocks, recording, findings, units, moment).addTo(document);
    document.close();
  }
}
