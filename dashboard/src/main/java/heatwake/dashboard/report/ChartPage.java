package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Image;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.chart.ChartStyle;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.chart.Strip;
import heatwake.dashboard.chart.StripStack;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.awt.Graphics2D;
import java.util.List;

/** The charts of the run, as vectors, on a page of their own. */
final class ChartPage {
  /** More strips on one page would be too flat to read. */
  private static final int MOST_STRIPS = 6;

  private static final int TALLEST_STRIP = 140;
  private static final int HEADING_HEIGHT = 40;

  private final Blocks blocks;
  private final RunCharts charts;
  private final ReportFontMapper mapper;

  ChartPage(
      Blocks blocks, Recording recording, Findings findings, UnitChoice units, Moment moment) {
    this.blocks = blocks;
    this.charts = RunCharts.of(recording, findings, units, moment);
    this.mapper = new ReportFontMapper(blocks.fonts());
  }

  void addTo(Document document, PdfWriter writer) {
    List<Strip> strips = charts.strips();
    if (strips.isEmpty()) {
      return;
    }
    document.newPage();
    document.add(blocks.heading("The run over time"));
    List<Strip> shown = strips.subList(0, Math.min(MOST_STRIPS, strips.size()));
    int width = (int) (document.right() - document.left());
    int most = (int) (document.top() - document.bottom()) - HEADING_HEIGHT;
    int height = Math.min(most, shown.size() * TALLEST_STRIP + HEADING_HEIGHT);
    StripStack stack = charts.stack(shown, charts.whole(), ChartStyle.PRINT);
    PdfTemplate template = writer.getDirectContent().createTemplate(width, height);
    Graphics2D surface = template.createGraphics(width, height, mapper);
    stack.paint(surface, width, height);
    surface.dispose();
    document.add(Image.getInstance(template));
  }
}
