package heatwake.dashboard.report;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import java.awt.Font;

/** Prints the charts' text in the report's own embedded fonts. */
final class ReportFontMapper implements FontMapper {
  private final ReportFonts fonts;

  ReportFontMapper(ReportFonts fonts) {
    this.fonts = fonts;
  }

  @Override
  public BaseFont awtToPdf(Font font) {
    return font.isBold() ? fonts.bold() : fonts.regular();
  }

  @Override
  public Font pdfToAwt(BaseFont font, int size) {
    return new Font(Font.SANS_SERIF, font == fonts.bold() ? Font.BOLD : Font.PLAIN, size);
  }
}
