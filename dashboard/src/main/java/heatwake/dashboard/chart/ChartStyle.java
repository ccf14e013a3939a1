package heatwake.dashboard.chart;

import java.awt.BasicStroke;
import java.awt.Font;

/**
 * Sizes of what is painted, in the units of the surface: pixels on a screen, points on paper.
 *
 * @param textSize height of the axis labels' font
 * @param lineWidth width of a line
 * @param columnsPerUnit columns that a line is thinned to, per unit of width; more than one where a
 *     surface resolves finer than its unit
 */
public record ChartStyle(float textSize, float lineWidth, double columnsPerUnit) {
  /** For a screen or a picture. */
  public static final ChartStyle SCREEN = new ChartStyle(12.5f, 1.6f, 1);

  /** For a printed page measured in points. */
  public static final ChartStyle PRINT = new ChartStyle(7f, 0.7f, 2);

  Font plain() {
    return ChartType.REGULAR.deriveFont(textSize);
  }

  Font bold() {
    return ChartType.BOLD.deriveFont(textSize);
  }

  BasicStroke thin() {
    return new BasicStroke(Math.max(0.4f, lineWidth * 0.6f));
  }

  /** A length given for text of size 12. */
  int scaled(double length) {
    return (int) Math.round(length * textSize / 12);
  }
}
