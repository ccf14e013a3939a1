package heatwake.dashboard.chart;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Small shapes along the lines of a strip, another for each, where colours may be lost: a report
 * printed grey, or an eye that does not part them.
 */
final class LineMarks {
  private static final int PER_LINE = 5;

  /** A mark stands on its line or not at all: this share of the range it may be moved to do so. */
  private static final double NEAR = 0.02;

  private final List<Line> lines;
  private final ChartStyle style;

  LineMarks(List<Line> lines, ChartStyle style) {
    this.lines = lines;
    this.style = style;
  }

  /** The points of a thinned line that are marked; those of another line stand beside them. */
  int[] placesOn(Line line, Polyline points, long lengthMs) {
    if (!isMarked(line)) {
      return new int[0];
    }
    double shift = (lines.indexOf(line) + 0.5) / lines.size();
    return IntStream.range(0, PER_LINE)
        .map(k -> nearest(points, (k + shift) / PER_LINE * lengthMs, NEAR * lengthMs))
        .filter(i -> i >= 0)
        .toArray();
  }

  /** The point nearest to a moment, or -1 where the line has a gap. */
  private static int nearest(Polyline points, double atMs, double withinMs) {
    int best = -1;
    double bestMs = withinMs;
    for (int i = 0; i < points.x().length; i++) {
      double awayMs = Math.abs(points.x()[i] - atMs);
      if (awayMs < bestMs && !Double.isNaN(points.y()[i])) {
        best = i;
        bestMs = awayMs;
      }
    }
    return best;
  }

  /** Paints a line's mark with its middle at a place. */
  void paint(Graphics2D g, Line line, double x, double y) {
    if (!isMarked(line)) {
      return;
    }
    Shape mark = shape(lines.indexOf(line), x, y, style.markSize() / 2);
    g.setColor(Palette.PAPER);
    g.fill(mark);
    g.setColor(line.color());
    g.setStroke(style.thin());
    g.draw(mark);
  }

  /** A line alone needs none, and a dashed one is told by its dashes. */
  private boolean isMarked(Line line) {
    return style.markSize() > 0 && lines.size() > 1 && !(line instanceof Line.OfExpectedHeat);
  }

  private static Shape shape(int index, double x, double y, double half) {
    return switch (index % 4) {
      case 0 -> new Ellipse2D.Double(x - half, y - half, 2 * half, 2 * half);
      case 1 -> polygon(x, y, half, -1, -1, 1, -1, 1, 1, -1, 1);
      case 2 -> polygon(x, y, half, 0, -1.2, 1.1, 0.9, -1.1, 0.9);
      default -> polygon(x, y, half, 0, -1.4, 1.4, 0, 0, 1.4, -1.4, 0);
    };
  }

  private static Shape polygon(double x, double y, double half, double... corners) {
    Path2D.Double path = new Path2D.Double();
    path.moveTo(x + half * corners[0], y + half * corners[1]);
    for (int i = 2; i < corners.length; i += 2) {
      path.lineTo(x + half * corners[i], y + half * corners[i + 1]);
    }
    path.closePath();
    return path;
  }
}
