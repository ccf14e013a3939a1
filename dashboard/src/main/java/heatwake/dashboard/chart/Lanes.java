package heatwake.dashboard.chart;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.series.Note;
import heatwake.dashboard.present.Names;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** The lanes above the strips: phases, flags, notes. */
final class Lanes {
  private final StripStack stack;
  private final StackLayout layout;
  private final ChartStyle style;

  Lanes(StripStack stack, StackLayout layout) {
    this.stack = stack;
    this.layout = layout;
    this.style = stack.style();
  }

  void paint(Graphics2D g) {
    g.setFont(style.plain());
    paintPhases(g);
    paintFlags(g);
    paintNotes(g);
  }

  /** One phase's colour; what is not known is hatched, so that it never passes for a phase. */
  static void paintPhase(Graphics2D g, Phase phase, Rectangle2D place) {
    g.setColor(Palette.of(phase));
    g.fill(place);
    if (phase == Phase.UNKNOWN) {
      Graphics2D hatch = (Graphics2D) g.create();
      hatch.clip(place);
      hatch.setColor(Palette.FRAME);
      hatch.setStroke(new BasicStroke(0.7f));
      double height = place.getHeight();
      for (double x = place.getX() - height; x < place.getMaxX(); x += Math.max(4, height / 3)) {
        hatch.draw(new Line2D.Double(x, place.getMaxY(), x + height, place.getY()));
      }
      hatch.dispose();
    }
  }

  private void paintPhases(Graphics2D g) {
    Rectangle lane = layout.band();
    g.setColor(Palette.LANE);
    g.fill(lane);
    for (PhaseSpan span : stack.charts().findings().phases()) {
      Rectangle2D place = place(lane, span.startMs(), span.endMs(), 0);
      if (place == null) {
        continue;
      }
      paintPhase(g, span.phase(), place);
      g.setColor(Palette.INK);
      paintInside(g, span.phase().id(), place);
    }
    g.setColor(Palette.FRAME);
    g.setStroke(style.thin());
    g.draw(lane);
    paintName(g, "phase", lane.y, lane.height);
  }

  private void paintFlags(Graphics2D g) {
    List<List<Flag>> rows = stack.flagRows();
    if (rows.isEmpty()) {
      return;
    }
    Rectangle lane = layout.flags();
    int height = lane.height / rows.size();
    for (int row = 0; row < rows.size(); row++) {
      Rectangle its = new Rectangle(lane.x, lane.y + row * height, lane.width, height - 2);
      for (Flag flag : rows.get(row)) {
        Rectangle2D place = place(its, flag.startMs(), flag.endMs(), style.scaled(4));
        if (place != null) {
          g.setColor(Palette.of(flag.severity()));
          g.fill(place);
          g.setColor(Color.WHITE);
          paintInside(g, Names.ofRule(flag.rule()), place);
        }
      }
    }
    paintName(g, "flags", lane.y, height);
  }

  private void paintNotes(Graphics2D g) {
    Rectangle lane = layout.notes();
    if (lane.height == 0) {
      return;
    }
    paintName(g, "notes", lane.y, lane.height);
    List<Note> notes =
        stack.charts().recording().notes().stream()
            .filter(note -> stack.range().contains(note.timeMs()))
            .toList();
    FontMetrics metrics = g.getFontMetrics();
    for (int i = 0; i < notes.size(); i++) {
      double x = layout.x(notes.get(i).timeMs(), stack.range());
      double next =
          i + 1 < notes.size()
              ? layout.x(notes.get(i + 1).timeMs(), stack.range())
              : lane.getMaxX() + style.scaled(10);
      g.setColor(Palette.NOTE);
      double half = style.scaled(4);
      Path2D marker = new Path2D.Double();
      marker.moveTo(x - half, lane.y + style.scaled(4));
      marker.lineTo(x + half, lane.y + style.scaled(4));
      marker.lineTo(x, lane.y + style.scaled(12));
      marker.closePath();
      g.fill(marker);
      g.setStroke(
          new BasicStroke(
              style.thin().getLineWidth(),
              BasicStroke.CAP_BUTT,
              BasicStroke.JOIN_MITER,
              10,
              new float[] {style.scaled(2), style.scaled(3)},
              0));
      g.draw(new Line2D.Double(x, lane.y + style.scaled(12), x, layout.axis().y));
      String text = shortened(notes.get(i).text(), metrics, next - x - style.scaled(16));
      g.drawString(text, (float) (x + style.scaled(7)), baseline(metrics, lane.y, lane.height));
    }
  }

  /** As much of a text as fits; nothing if that is next to nothing. */
  private static String shortened(String text, FontMetrics metrics, double width) {
    String oneLine = text.strip().replaceAll("\\s+", " ");
    if (metrics.stringWidth(oneLine) <= width) {
      return oneLine;
    }
    int length = oneLine.length();
    while (length > 0 && metrics.stringWidth(oneLine.substring(0, length) + "…") > width) {
      length--;
    }
    return length < 4 ? "" : oneLine.substring(0, length) + "…";
  }

  private Rectangle2D place(Rectangle lane, long startMs, long endMs, int leastWidth) {
    if (!stack.range().touches(startMs, endMs)) {
      return null;
    }
    double left = Math.max(lane.x, layout.x(startMs, stack.range()));
    double right = Math.min(lane.getMaxX(), layout.x(endMs, stack.range()));
    right = Math.min(lane.getMaxX(), Math.max(right, left + leastWidth));
    return new Rectangle2D.Double(left, lane.y, right - left, lane.height);
  }

  private void paintInside(Graphics2D g, String text, Rectangle2D place) {
    FontMetrics metrics = g.getFontMetrics();
    if (metrics.stringWidth(text) + style.scaled(8) <= place.getWidth()) {
      g.drawString(
          text,
          (float) place.getX() + style.scaled(4),
          baseline(metrics, place.getY(), place.getHeight()));
    }
  }

  private void paintName(Graphics2D g, String name, int y, int height) {
    FontMetrics metrics = g.getFontMetrics();
    g.setColor(Palette.FAINT_INK);
    g.drawString(
        name,
        layout.band().x - style.scaled(6) - metrics.stringWidth(name),
        baseline(metrics, y, height));
  }

  private static float baseline(FontMetrics metrics, double y, double height) {
    return (float) (y + (height + metrics.getAscent() - metrics.getDescent()) / 2);
  }
}
