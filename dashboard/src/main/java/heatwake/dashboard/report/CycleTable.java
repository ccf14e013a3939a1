package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import heatwake.analysis.finding.Findings;
import heatwake.dashboard.present.CycleRow;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.util.List;
import java.util.Optional;

/** The compressor cycles, one a line; its heading stands on every page it runs over. */
final class CycleTable {
  /** So many leave room for the start-up list on a page; more have a page of their own. */
  private static final int FEW = 20;

  /** As many as fill a page; a customer reads no more, and the rest is named in one line. */
  private static final int MOST_ROWS = 60;

  /** The lines below it that say what was counted, pt. */
  private static final float COVERAGE_HEIGHT = 26;

  private static final float[] RATIO = {7, 42, 20, 22, 22, 17};

  private final Blocks blocks;
  private final ReportFonts fonts;
  private final List<CycleRow> rows;
  private final String energyUnit;

  /** Laid out once, to be measured and placed; empty if there is no cycle. */
  private final Optional<PdfPTable> table;

  CycleTable(Blocks blocks, Findings findings, UnitChoice units, Moment moment) {
    this.blocks = blocks;
    this.fonts = blocks.fonts();
    this.rows = CycleRow.of(findings, units, moment);
    this.energyUnit = CycleRow.energyUnit(units);
    this.table = rows.isEmpty() ? Optional.empty() : Optional.of(laidOut());
  }

  /** Whether there are few enough cycles to stand with something else on a page. */
  boolean isShort() {
    return rows.size() <= FEW;
  }

  /** Whether all of it fits below what stands on the page; a page for two lines helps nobody. */
  boolean fitsBelow(Document document, PdfWriter writer) {
    float at = writer.getVerticalPosition(false);
    // What ends within a line of the page's foot has begun the next page already.
    boolean isFresh = at >= document.top();
    return table
        .map(one -> !isFresh && at - height(one, document) >= document.bottom())
        .orElse(true);
  }

  private static float height(PdfPTable table, Document document) {
    table.setTotalWidth(document.right() - document.left());
    return table.spacingBefore() + table.getTotalHeight() + COVERAGE_HEIGHT;
  }

  void addTo(Document document) {
    if (table.isEmpty()) {
      return;
    }
    document.add(table.get());
    String rest =
        rows.size() > MOST_ROWS
            ? "And " + (rows.size() - MOST_ROWS) + " more; heatwake analyse --json lists them all. "
            : "";
    document.add(blocks.paragraph(rest + CycleRow.coverage(rows), fonts.soft()));
  }

  private PdfPTable laidOut() {
    PdfPTable table = blocks.table(RATIO);
    addHeading(table);
    for (CycleRow row : rows.subList(0, Math.min(MOST_ROWS, rows.size()))) {
      addLeft(table, Integer.toString(row.number()), fonts.soft());
      addLeft(table, row.when(), fonts.text());
      addRight(table, row.ran(), fonts.text());
      addRight(table, row.heat(), fonts.text());
      addRight(table, row.electric(), fonts.text());
      addRight(table, row.cop(), fonts.strong());
    }
    table.setSpacingBefore(14);
    table.setKeepTogether(isShort());
    return table;
  }

  private void addHeading(PdfPTable table) {
    PdfPCell heading = blocks.frame();
    heading.setColspan(RATIO.length);
    heading.addElement(blocks.heading("Compressor: " + CycleRow.summary(rows)));
    table.addCell(heading);
    addLeft(table, "", fonts.soft());
    addLeft(table, "Start to stop", fonts.soft());
    addRight(table, "Ran", fonts.soft());
    addRight(table, "Heat, " + energyUnit, fonts.soft());
    addRight(table, "Electric, " + energyUnit, fonts.soft());
    addRight(table, "COP", fonts.soft());
    table.setHeaderRows(2);
  }

  private void addLeft(PdfPTable table, String text, Font font) {
    table.addCell(thin(blocks.cell(text, font)));
  }

  private void addRight(PdfPTable table, String text, Font font) {
    PdfPCell cell = thin(blocks.cell(text, font));
    cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
    table.addCell(cell);
  }

  /** Sixty lines fit on a page; a few below something else stand as wide as that does. */
  private PdfPCell thin(PdfPCell cell) {
    cell.setPaddingTop(0.5f);
    cell.setPaddingBottom(isShort() ? 3 : 1.5f);
    cell.setNoWrap(true);
    return cell;
  }
}
