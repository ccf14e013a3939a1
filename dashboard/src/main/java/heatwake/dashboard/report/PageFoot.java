package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/** The foot of every page: what report this is, and which page of how many. */
final class PageFoot extends PdfPageEventHelper {
  private static final float ABOVE_EDGE = 24;
  private static final float TOTAL_WIDTH = 40;

  private final String text;
  private final ReportFonts fonts;
  private PdfTemplate total;

  PageFoot(String text, ReportFonts fonts) {
    this.text = text;
    this.fonts = fonts;
  }

  @Override
  public void onOpenDocument(PdfWriter writer, Document document) {
    total = writer.getDirectContent().createTemplate(TOTAL_WIDTH, 12);
  }

  @Override
  public void onEndPage(PdfWriter writer, Document document) {
    PdfContentByte page = writer.getDirectContent();
    ColumnText.showTextAligned(
        page, Element.ALIGN_LEFT, new Phrase(text, fonts.soft()), document.left(), ABOVE_EDGE, 0);
    float numberEnds = document.right() - TOTAL_WIDTH / 2;
    ColumnText.showTextAligned(
        page,
        Element.ALIGN_RIGHT,
        new Phrase("Page " + writer.getPageNumber() + " of ", fonts.soft()),
        numberEnds,
        ABOVE_EDGE,
        0);
    page.addTemplate(total, numberEnds, ABOVE_EDGE - 2);
  }

  @Override
  public void onCloseDocument(PdfWriter writer, Document document) {
    ColumnText.showTextAligned(
        total,
        Element.ALIGN_LEFT,
        new Phrase(String.valueOf(writer.getPageNumber() - 1), fonts.soft()),
        1,
        2,
        0);
  }
}
