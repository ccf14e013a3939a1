package heatwake.dashboard.chart;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.util.Map;

/** The lanes of a strip of states: one under the other, filled while the state is on. */
record StateLanes(Rectangle plot, TimeRange range, ChartStyle style) {

  void paint(Graphics2D g, Map<Line, Samples> lanes) {
    int height = plot.height / lanes.size();
    int y = plot.y;
    for (Map.Entry<Line, Samples> lane : lanes.entrySet()) {
      FontMetrics metrics = g.getFontMetrics(style.plain());
      g.setColor(Palette.FAINT_INK);
      String name = lane.getKey().name();
      g.setFont(
          style
              .plain()
              .deriveFont(
                  style.textSize()
                      * Math.min(
                          1f, (float) (plot.x - style.scaled(8)) / metrics.stringWidth(name))));
      g.drawString(
          name,
          plot.x - style.scaled(6) - g.getFontMetrics().stringWidth(name),
          y + (height + metrics.getAscent()) / 2);
      Rectangle place =
          new Rectangle(plot.x, y + style.scaled(3), plot.width, height - style.scaled(6));
      paintOnSpans(g, lane.getValue(), place);
      y += height;
    }
  }

  private void paintOnSpans(Graphics2D g, Samples states, Rectangle place) {
    int first = Math.max(0, states.firstAtOrAfter(range.fromMs()) - 1);
    long onSince = Long.MIN_VALUE;
    for (int i = first; i < states.size() && states.timeMs(i) <= range.toMs(); i++) {
      boolean on = states.value(i) > 0.5;
      boolean last = i + 1 == states.size() || states.timeMs(i + 1) > range.toMs();
      long heldUntil = last ? states.timeMs(i) + states.gapMs() : states.timeMs(i + 1);
      boolean holds = heldUntil - states.timeMs(i) <= states.gapMs();
      if (on && onSince == Long.MIN_VALUE) {
        onSince = states.timeMs(i);
      }
      if (onSince != Long.MIN_VALUE && (!on || !holds || last)) {
        long until = on && last ? Math.min(heldUntil, range.toMs()) : states.timeMs(i);
        paintSpan(g, onSince, until, place);
        onSince = Long.MIN_VALUE;
      }
    }
  }

  private void paintSpan(Graphics2D g, long fromMs, long toMs, Rectangle place) {
    double left = place.x + Math.max(0, range.shareAt(fromMs)) * place.width;
    double right = place.x + Math.min(1, range.shareAt(toMs)) * place.width;
    g.setColor(Palette.SKY);
    g.fill(new Rectangle2D.Double(left, place.y, Math.max(1, right - left), place.height));
  }
}
