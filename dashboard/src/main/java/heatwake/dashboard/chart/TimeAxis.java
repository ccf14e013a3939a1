package heatwake.dashboard.chart;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.util.List;

/** The time axis of a stack: round times, the day, what the band's colours mean, the zone. */
final class TimeAxis {
  private final StripStack stack;
  private final StackLayout layout;
  private final List<TimeTick> ticks;

  TimeAxis(StripStack stack, StackLayout layout) {
    this.stack = stack;
    this.layout = layout;
    int most = Math.max(2, layout.axis().width / stack.style().scaled(80));
    this.ticks = TimeTicks.round(stack.range(), most, stack.charts().times().zone());
  }

  List<TimeTick> ticks() {
    return ticks;
  }

  double x(TimeTick tick) {
    return layout.x(tick.ms(), stack.range());
  }

  void paint(Graphics2D g) {
    Rectangle place = layout.axis();
    ChartStyle style = stack.style();
    g.setStroke(style.thin());
    FontMetrics plain = g.getFontMetrics(style.plain());
    int baseline = place.y + style.scaled(5) + plain.getAscent();
    double taken = 0;
    for (TimeTick tick : ticks) {
      double x = x(tick);
      g.setColor(Palette.FRAME);
      g.draw(new Line2D.Double(x, place.y, x, place.y + style.scaled(4)));
      g.setFont(tick.newDay() ? style.bold() : style.plain());
      int width = g.getFontMetrics().stringWidth(tick.label());
      double from = Math.min(x - width / 2.0, place.getMaxX() + style.scaled(10) - width);
      if (from > taken) {
        g.setColor(Palette.INK);
        g.drawString(tick.label(), (float) from, baseline);
        taken = from + width + style.scaled(6);
      }
    }
    paintFoot(g, baseline + plain.getHeight() + style.scaled(1));
  }

  private void paintFoot(Graphics2D g, int baseline) {
    ChartStyle style = stack.style();
    Rectangle place = layout.axis();
    g.setFont(style.plain());
    g.setColor(Palette.FAINT_INK);
    FontMetrics metrics = g.getFontMetrics();
    String day = stack.charts().times().date(stack.range().fromMs());
    String zone = stack.charts().times().zoneAt(stack.range().fromMs());
    g.drawString(day, place.x, baseline);
    int zoneLeft = (int) place.getMaxX() - metrics.stringWidth(zone);
    g.drawString(zone, zoneLeft, baseline);

    List<Phase> phases =
        stack.charts().findings().phases().stream()
            .map(PhaseSpan::phase)
            .distinct()
            .sorted()
            .toList();
    int square = style.scaled(10);
    int between = style.scaled(14);
    int width = 0;
    for (Phase phase : phases) {
      width += square + style.scaled(4) + metrics.stringWidth(phase.id()) + between;
    }
    int from = place.x + metrics.stringWidth(day) + 2 * between;
    if (from + width > zoneLeft - between) {
      return;
    }
    int x = Math.max(from, place.x + (place.width - width) / 2);
    x = Math.min(x, zoneLeft - between - width);
    for (Phase phase : phases) {
      Rectangle key = new Rectangle(x, baseline - square + style.scaled(1), square, square);
      Lanes.paintPhase(g, phase, key);
      g.setColor(Palette.FAINT_INK);
      g.drawString(phase.id(), x + square + style.scaled(4), baseline);
      x += square + style.scaled(4) + metrics.stringWidth(phase.id()) + between;
    }
  }
}
