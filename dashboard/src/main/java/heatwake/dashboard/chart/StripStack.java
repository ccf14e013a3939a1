package heatwake.dashboard.chart;

import heatwake.analysis.finding.Flag;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Strips over one time axis, with the phases as a coloured band, the flags and the notes on top.
 * Paints itself onto any surface: a screen, a picture, a page.
 */
public final class StripStack {
  private static final int MOST_FLAG_ROWS = 4;

  private final RunCharts charts;
  private final List<Strip> strips;
  private final TimeRange range;
  private final ChartStyle style;
  private final List<List<Flag>> flagRows;

  StripStack(RunCharts charts, List<Strip> strips, TimeRange range, ChartStyle style) {
    this.charts = charts;
    this.strips = List.copyOf(strips);
    this.range = range;
    this.style = style;
    this.flagRows = inRows(charts.findings().flags());
  }

  /** Paints into the rectangle from (0, 0) to (width, height). */
  public void paint(Graphics2D surface, int width, int height) {
    Graphics2D g = (Graphics2D) surface.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    StackLayout layout = StackLayout.of(this, width, height);
    TimeAxis axis = new TimeAxis(this, layout);
    for (StackLayout.Place place : layout.strips()) {
      new StripPainter(this, place, axis).paint(g);
    }
    axis.paint(g);
    new Lanes(this, layout).paint(g);
    g.dispose();
  }

  /** Paints a line at one moment with the values there, over a stack painted before. */
  public void paintCursor(Graphics2D surface, int width, int height, long ms) {
    Graphics2D g = (Graphics2D) surface.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    new Cursor(this, StackLayout.of(this, width, height)).paint(g, ms);
    g.dispose();
  }

  /** Shades a span over a stack painted before. */
  public void paintSpan(Graphics2D surface, int width, int height, TimeRange span) {
    StackLayout layout = StackLayout.of(this, width, height);
    double left = Math.max(layout.band().x, layout.x(span.fromMs(), range));
    double right = Math.min(layout.band().getMaxX(), layout.x(span.toMs(), range));
    if (right >= left) {
      Graphics2D g = (Graphics2D) surface.create();
      g.setColor(Palette.SELECTION);
      g.fill(
          new Rectangle2D.Double(
              left, layout.band().y, Math.max(2, right - left), layout.axis().y - layout.band().y));
      g.dispose();
    }
  }

  /** The moment at a horizontal place of a stack painted this wide; beyond the range outside it. */
  public long timeAt(int width, int x) {
    return StackLayout.of(this, width, 1000).ms(x, range);
  }

  /** The flag whose bar is at a place, if there is one. */
  public Optional<Flag> flagAt(int width, int height, int x, int y) {
    Rectangle lane = StackLayout.of(this, width, height).flags();
    if (!lane.contains(x, y)) {
      return Optional.empty();
    }
    List<Flag> row = flagRows.get((y - lane.y) * flagRows.size() / lane.height);
    long slack = range.lengthMs() * 4 / lane.width;
    long at = timeAt(width, x);
    return row.stream()
        .filter(flag -> at >= flag.startMs() - slack && at <= flag.endMs() + slack)
        .findFirst();
  }

  public TimeRange range() {
    return range;
  }

  RunCharts charts() {
    return charts;
  }

  List<Strip> strips() {
    return strips;
  }

  ChartStyle style() {
    return style;
  }

  List<List<Flag>> flagRows() {
    return flagRows;
  }

  /** Lays flags into rows in which none hides another; the last row takes what is left. */
  private static List<List<Flag>> inRows(List<Flag> flags) {
    List<List<Flag>> rows = new ArrayList<>();
    for (Flag flag : flags) {
      List<Flag> free =
          rows.stream()
              .filter(row -> row.stream().noneMatch(other -> overlap(flag, other)))
              .findFirst()
              .orElse(null);
      if (free == null && rows.size() < MOST_FLAG_ROWS) {
        free = new ArrayList<>();
        rows.add(free);
      }
      (free == null ? rows.get(rows.size() - 1) : free).add(flag);
    }
    return rows;
  }

  private static boolean overlap(Flag one, Flag other) {
    return one.startMs() < other.endMs() && other.startMs() < one.endMs();
  }
}
