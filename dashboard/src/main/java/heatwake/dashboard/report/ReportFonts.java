package heatwake.dashboard.report;

import com.lowagie.text.Font;
import com.lowagie.text.pdf.BaseFont;
import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;

/**
 * The report's type. The fonts are embedded, so that a site's name in Greek or Cyrillic prints as
 * it was typed and every reader shows the same page.
 */
final class ReportFonts {
  static final Color INK = new Color(0x1F2A33);
  static final Color SOFT = new Color(0x5B6B77);

  private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

  private final BaseFont regular;
  private final BaseFont bold;

  ReportFonts() throws IOException {
    regular = load("Roboto-Regular.ttf");
    bold = load("Roboto-Bold.ttf");
  }

  private static BaseFont load(String name) throws IOException {
    try (InputStream in = ReportFonts.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IOException("font " + name + " is missing from the program's libraries");
      }
      return BaseFont.createFont(
          name, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, true, in.readAllBytes(), null);
    }
  }

  BaseFont regular() {
    return regular;
  }

  BaseFont bold() {
    return bold;
  }

  Font title() {
    return new Font(bold, 20, Font.NORMAL, INK);
  }

  Font heading() {
    return new Font(bold, 11, Font.NORMAL, INK);
  }

  Font strong() {
    return new Font(bold, 9, Font.NORMAL, INK);
  }

  Font text() {
    return new Font(regular, 9, Font.NORMAL, INK);
  }

  Font soft() {
    return new Font(regular, 8, Font.NORMAL, SOFT);
  }

  Font figure() {
    return new Font(bold, 15, Font.NORMAL, INK);
  }
}
