package heatwake.dashboard.chart;

import heatwake.dashboard.present.DisplayUnit;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.util.List;

/** The line over a strip: what it shows, in which unit, and which line is which. */
record StripHeading(
    Strip strip, DisplayUnit unit, Rectangle heading, ChartStyle style, LineMarks marks) {

  void paint(Graphics2D g, List<Line> lines) {
    g.setFont(style.bold());
    FontMetrics bold = g.getFontMetrics();
    int baseline = heading.y + heading.height - style.scaled(5);
    g.setColor(Palette.INK);
    g.drawString(strip.title(), heading.x, baseline);
    int x = heading.x + bold.stringWidth(strip.title()) + style.scaled(6);
    g.setFont(style.plain());
    g.setColor(Palette.FAINT_INK);
    g.drawString(unit.symbol(), x, baseline);
    x += g.getFontMetrics().stringWidth(unit.symbol()) + style.scaled(18);
    boolean titleSaysIt = lines.size() == 1 && strip.lines().size() == 1;
    if (!titleSaysIt && !strip.isLanes()) {
      paintKeys(g, lines, x, baseline);
    }
  }

  private void paintKeys(Graphics2D g, List<Line> lines, int from, int baseline) {
    int stroke = style.scaled(16);
    int needed = 0;
    for (Line line : lines) {
      needed += stroke + style.scaled(20) + g.getFontMetrics().stringWidth(line.name());
    }
    float squeeze = Math.min(1, Math.max(0.6f, (float) (heading.getMaxX() - from) / needed));
    g.setFont(style.plain().deriveFont(style.textSize() * squeeze));
    float x = from;
    for (Line line : lines) {
      g.setColor(line.color());
      g.setStroke(style.strokeOf(line, style.lineWidth() * 1.6f));
      double y = baseline - style.scaled(4);
      g.draw(new Line2D.Double(x, y, x + stroke * squeeze, y));
      marks.paint(g, line, x + stroke * squeeze / 2, y);
      x += (stroke + style.scaled(5)) * squeeze;
      g.setColor(Palette.INK);
      g.drawString(line.name(), x, baseline);
      x += g.getFontMetrics().stringWidth(line.name()) + style.scaled(15) * squeeze;
    }
  }
}
