package heatwake.dashboard.report;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import java.awt.Font;
import java.util.Locale;

/** Prints the charts' text in the report's own embedded fonts. */
final class ReportFontMapper implements FontMapper {
  private final ReportFonts fonts;

  ReportFontMapper(ReportFonts fonts) {
    this.fonts = fonts;
  }

  @Override
  public BaseFont awtToPdf(Font font) {
    // A font made from a file of bold letters does not call itself bold.
    return font.isBold() || font.getFontName(Locale.ROOT).endsWith("Bold")
        ? fonts.bold()
        : fonts.regular();
  }

  @Override
  public Font pdfToAwt(BaseFont font, int size) {
    return new Font(Font.SANS_SERIF, font == fonts.bold() ? Font.BOLD : Font.PLAIN, size);
  }
}
