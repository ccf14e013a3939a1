package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import heatwake.dashboard.present.Cautions;
import java.util.List;

/** The cautions and the lines to sign below them, never parted by the end of a page. */
final class ClosingBlock {
  /** Parts the cautions from what stands above them. */
  private static final float SPACE_ABOVE = 8;

  private final Blocks blocks;
  private final ReportFonts fonts;

  ClosingBlock(Blocks blocks) {
    this.blocks = blocks;
    this.fonts = blocks.fonts();
  }

  void addTo(Document document) {
    PdfPTable whole = blocks.table(1);
    whole.addCell(cautions());
    whole.addCell(signature());
    whole.setKeepTogether(true);
    whole.setSpacingBefore(SPACE_ABOVE);
    document.add(whole);
  }

  private PdfPCell cautions() {
    PdfPCell cell = blocks.frame();
    cell.addElement(blocks.heading("Cautions"));
    cell.addElement(blocks.halves(Cautions.all(), fonts.soft()));
    return cell;
  }

  private PdfPCell signature() {
    PdfPTable lines = blocks.table(40, 4, 40, 4, 26);
    for (String label : List.of("Technician", "", "Customer", "", "Date")) {
      PdfPCell line = blocks.cell(label, fonts.soft());
      line.setBorder(label.isEmpty() ? Rectangle.NO_BORDER : Rectangle.TOP);
      lines.addCell(line);
    }
    PdfPCell cell = blocks.frame();
    cell.setPaddingTop(14);
    cell.addElement(lines);
    return cell;
  }
}
