package heatwake.dashboard.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;

/**
 * The charts' type. It comes with the program, so that a chart measures its text alike on a screen,
 * in a picture and on a page, whatever fonts the machine has.
 */
final class ChartType {
  private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

  static final Font REGULAR = load("Roboto-Regular.ttf", Font.PLAIN);
  static final Font BOLD = load("Roboto-Bold.ttf", Font.BOLD);

  private ChartType() {}

  /** A machine that cannot make a font of the file still has one of its own. */
  private static Font load(String name, int style) {
    try (InputStream in = ChartType.class.getResourceAsStream(FOLDER + name)) {
      if (in != null) {
        return Font.createFont(Font.TRUETYPE_FONT, in);
      }
    } catch (FontFormatException | IOException e) {
      System.getLogger(ChartType.class.getName())
          .log(System.Logger.Level.WARNING, "font {0} cannot be used: {1}", name, e.getMessage());
    }
    return new Font(Font.SANS_SERIF, style, 1);
  }
}
