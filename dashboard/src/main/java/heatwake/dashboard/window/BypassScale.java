package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.BypassAdvice.Scale;
import heatwake.dashboard.present.Figure;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import javax.swing.JComponent;

/**
 * The range where flow or rise belongs as a bar, and the figure with its uncertainty as a pointer.
 */
final class BypassScale extends JComponent {
  private static final Color WITHIN = new Color(0x9AD3BF);
  private static final Color OUTSIDE = new Color(0xE6EAED);

  private final transient Scale scale;

  BypassScale(Scale scale) {
    this.scale = scale;
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    double bar = 26;
    double height = 18;
    g.setColor(OUTSIDE);
    g.fill(new Rectangle2D.Double(0, bar, getWidth(), height));
    g.setColor(WITHIN);
    g.fill(
        new Rectangle2D.Double(
            x(scale.least()), bar, x(scale.greatest()) - x(scale.least()), height));
    g.setFont(Theme.font(Font.PLAIN, 13f));
    FontMetrics metrics = g.getFontMetrics();
    g.setColor(Palette.FAINT_INK);
    float below = (float) (bar + height + metrics.getAscent() + 4);
    float lowest = below + metrics.getHeight();
    g.drawString(scale.below(), 0, lowest);
    g.drawString(scale.above(), getWidth() - metrics.stringWidth(scale.above()), lowest);
    centred(g, Figure.fixed(scale.least(), decimals()), x(scale.least()), below);
    centred(g, Figure.fixed(scale.greatest(), decimals()), x(scale.greatest()), below);
    if (!Double.isNaN(scale.value())) {
      pointer(g, bar, height);
    }
    g.dispose();
  }

  private void pointer(Graphics2D g, double bar, double height) {
    double x = x(scale.value());
    g.setColor(Palette.INK);
    g.setStroke(new BasicStroke(3f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    double from = x(scale.value() - scale.uncertainty());
    double to = x(scale.value() + scale.uncertainty());
    g.draw(new Line2D.Double(from, bar + height / 2, to, bar + height / 2));
    g.draw(new Line2D.Double(x, bar, x, bar + height));
    Path2D head = new Path2D.Double();
    head.moveTo(x, bar - 2);
    head.lineTo(x - 8, bar - 15);
    head.lineTo(x + 8, bar - 15);
    head.closePath();
    g.fill(head);
  }

  /** A flow of tens of litres needs none. */
  private int decimals() {
    return scale.greatest() < 10 ? 1 : 0;
  }

  private static void centred(Graphics2D g, String text, double x, float baseline) {
    g.drawString(text, (float) (x - g.getFontMetrics().stringWidth(text) / 2.0), baseline);
  }

  /** The range takes the middle half; a figure far outside stands at the end. */
  private double x(double figure) {
    double width = scale.greatest() - scale.least();
    double share = 0.25 + 0.5 * (figure - scale.least()) / width;
    return Math.max(0.02, Math.min(0.98, share)) * getWidth();
  }
}
