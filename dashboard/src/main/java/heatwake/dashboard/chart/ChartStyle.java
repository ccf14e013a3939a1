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
 * @param markSize width of the marks that tell the lines of a strip apart where colours may be
 *     lost; 0 for none
 */
public record ChartStyle(float textSize, float lineWidth, double columnsPerUnit, double markSize) {
  /** For a screen or a picture. */
  public static final ChartStyle SCREEN = new ChartStyle(12.5f, 1.6f, 1, 0);

  /** For a printed page measured in points; many are printed grey. */
  public static final ChartStyle PRINT = new ChartStyle(7f, 0.7f, 2, 4);

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

  /** A line's stroke: what is promised is dashed, what is measured drawn through. */
  BasicStroke strokeOf(Line line, float width) {
    return line instanceof Line.OfExpectedHeat
        ? dashed(width)
        : new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  BasicStroke dashed(float width) {
    return new BasicStroke(
        width,
        BasicStroke.CAP_BUTT,
        BasicStroke.JOIN_ROUND,
        10,
        new float[] {scaled(6), scaled(4)},
        0);
  }
}
