package heatwake.dashboard.chart;

import heatwake.dashboard.present.DisplayUnit;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.util.Map;

/** The line that follows the pointer, with the values at its moment. */
final class Cursor {
  private final StripStack stack;
  private final StackLayout layout;
  private final ChartStyle style;

  Cursor(StripStack stack, StackLayout layout) {
    this.stack = stack;
    this.layout = layout;
    this.style = stack.style();
  }

  void paint(Graphics2D g, long ms) {
    if (!stack.range().contains(ms)) {
      return;
    }
    double x = layout.x(ms, stack.range());
    g.setColor(Palette.FAINT_INK);
    g.setStroke(style.thin());
    g.draw(new Line2D.Double(x, layout.band().y, x, layout.axis().y));
    for (StackLayout.Place place : layout.strips()) {
      if (!place.strip().isLanes()) {
        paintValues(g, place, x, ms);
      }
    }
    paintTime(g, x, ms);
  }

  private void paintValues(Graphics2D g, StackLayout.Place place, double x, long ms) {
    DisplayUnit unit = place.strip().unit(stack.charts().units());
    g.setFont(style.bold());
    FontMetrics metrics = g.getFontMetrics();
    int row = metrics.getHeight();
    int y = place.plot().y + metrics.getAscent() + style.scaled(2);
    for (Map.Entry<Line, Samples> line : stack.charts().linesOf(place.strip()).entrySet()) {
      double value = at(line.getValue(), ms);
      if (Double.isNaN(value) || y > place.plot().getMaxY()) {
        continue;
      }
      String text = unit.number(unit.unit().toSi(value));
      int width = metrics.stringWidth(text);
      double left = x + style.scaled(5);
      if (left + width > place.plot().getMaxX()) {
        left = x - style.scaled(5) - width;
      }
      g.setColor(Palette.VEIL);
      g.fill(new Rectangle((int) left - 2, y - metrics.getAscent(), width + 4, row));
      g.setColor(line.getKey().color());
      g.drawString(text, (float) left, y);
      y += row;
    }
  }

  private void paintTime(Graphics2D g, double x, long ms) {
    String text = stack.charts().times().time(ms);
    g.setFont(style.bold());
    FontMetrics metrics = g.getFontMetrics();
    int width = metrics.stringWidth(text) + style.scaled(10);
    int left = (int) Math.max(0, Math.min(layout.axis().getMaxX() - width, x - width / 2.0));
    Rectangle box =
        new Rectangle(left, layout.axis().y + 1, width, metrics.getHeight() + style.scaled(3));
    g.setColor(Palette.INK);
    g.fillRoundRect(box.x, box.y, box.width, box.height, 6, 6);
    g.setColor(Palette.PAPER);
    g.drawString(text, left + style.scaled(5), box.y + metrics.getAscent() + style.scaled(1));
  }

  /** The value nearest to a moment, unless it stands further away than a gap. */
  private static double at(Samples samples, long ms) {
    int after = samples.firstAtOrAfter(ms);
    int before = after - 1;
    boolean nearerBefore =
        after >= samples.size()
            || (before >= 0 && ms - samples.timeMs(before) < samples.timeMs(after) - ms);
    int nearest = nearerBefore ? before : after;
    boolean near = nearest >= 0 && Math.abs(samples.timeMs(nearest) - ms) <= samples.gapMs();
    return near ? samples.value(nearest) : Double.NaN;
  }
}
