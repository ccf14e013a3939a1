package heatwake.dashboard.window;

import heatwake.analysis.finding.StartupCheck.Result;
import heatwake.dashboard.present.Tone;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import javax.swing.Icon;

/** A tick, a cross, an empty ring or a dash: told apart by shape as well as by colour. */
record CheckMark(Result result, int size) implements Icon {
  static Color colorOf(Result result) {
    return Theme.of(
        switch (result) {
          case PASS -> Tone.GOOD;
          case FAIL -> Tone.ALARM;
          case NOT_SEEN -> Tone.PLAIN;
          case NOT_MEASURED -> Tone.STALE;
        });
  }

  @Override
  public void paintIcon(Component on, Graphics graphics, int x, int y) {
    Graphics2D g = (Graphics2D) graphics.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.translate(x, y);
    g.scale(size / 20.0, size / 20.0);
    g.setColor(colorOf(result));
    g.setStroke(new BasicStroke(1.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    Ellipse2D disc = new Ellipse2D.Double(1, 1, 18, 18);
    if (result == Result.PASS || result == Result.FAIL) {
      g.fill(disc);
      g.setColor(Color.WHITE);
      g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    } else {
      g.draw(disc);
    }
    switch (result) {
      case PASS -> {
        Path2D tick = new Path2D.Double();
        tick.moveTo(5.5, 10.5);
        tick.lineTo(9, 14);
        tick.lineTo(14.5, 6.8);
        g.draw(tick);
      }
      case FAIL -> {
        g.draw(new Line2D.Double(6.5, 6.5, 13.5, 13.5));
        g.draw(new Line2D.Double(13.5, 6.5, 6.5, 13.5));
      }
      case NOT_MEASURED -> g.draw(new Line2D.Double(6.5, 10, 13.5, 10));
      case NOT_SEEN -> {}
    }
    g.dispose();
  }

  @Override
  public int getIconWidth() {
    return size;
  }

  @Override
  public int getIconHeight() {
    return size;
  }
}
