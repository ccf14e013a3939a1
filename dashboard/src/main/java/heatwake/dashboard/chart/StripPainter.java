package heatwake.dashboard.chart;

import heatwake.dashboard.present.DisplayUnit;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Paints one strip. The lines are XChart's; heading, lanes, grid and axes are painted here, because
 * XChart's time marks are not round and its plots of several charts do not stand exactly under each
 * other.
 */
final class StripPainter {
  private static final Color CLEAR = new Color(255, 255, 255, 0);

  /** Heights of a label from one label to the next, at least. */
  private static final double LABEL_SPACING = 1.5;

  private final StripStack stack;
  private final Strip strip;
  private final Rectangle heading;
  private final Rectangle plot;
  private final TimeAxis axis;
  private final ChartStyle style;
  private final DisplayUnit unit;
  private final LineMarks marks;

  StripPainter(StripStack stack, StackLayout.Place place, TimeAxis axis) {
    this.stack = stack;
    this.strip = place.strip();
    this.heading = place.heading();
    this.plot = place.plot();
    this.axis = axis;
    this.style = stack.style();
    this.unit = strip.unit(stack.charts().units());
    this.marks = new LineMarks(strip.lines(), style);
  }

  void paint(Graphics2D g) {
    g.setColor(Palette.PAPER);
    g.fill(plot);
    Map<Line, Samples> samples = stack.charts().linesOf(strip);
    new StripHeading(strip, unit, heading, style, marks).paint(g, List.copyOf(samples.keySet()));
    if (strip.isLanes()) {
      paintTimeGrid(g);
      new StateLanes(plot, stack.range(), style).paint(g, samples);
    } else {
      Map<Line, Polyline> lines = thinned(samples);
      List<Limit> limits = Limit.of(strip, stack.charts());
      ValueAxis values = valueAxis(lines, limits);
      paintTimeGrid(g);
      paintValueGrid(g, values);
      List<Limit> shown = limits.stream().filter(limit -> values.holds(limit.value())).toList();
      shown.forEach(limit -> paintLimit(g, limit, values));
      paintLines(g, lines, values);
      paintMarks(g, lines, values);
      shown.stream()
          .filter(limit -> hasRoomForName(g))
          .forEach(limit -> paintLimitName(g, limit, values));
    }
    g.setColor(Palette.FRAME);
    g.setStroke(style.thin());
    g.draw(plot);
  }

  private Map<Line, Polyline> thinned(Map<Line, Samples> samples) {
    int columns = (int) Math.ceil(plot.width * style.columnsPerUnit());
    Map<Line, Polyline> lines = new LinkedHashMap<>();
    samples.forEach((line, one) -> lines.put(line, Polyline.of(one, stack.range(), columns)));
    lines.values().removeIf(Polyline::isEmpty);
    return lines;
  }

  private ValueAxis valueAxis(Map<Line, Polyline> lines, List<Limit> limits) {
    if (strip.isPercent()) {
      return ValueAxis.percent();
    }
    double least = strip.isFromZero() ? 0 : Double.POSITIVE_INFINITY;
    double greatest = strip.isFromZero() ? 0 : Double.NEGATIVE_INFINITY;
    for (Polyline line : lines.values()) {
      least = Math.min(least, line.least());
      greatest = Math.max(greatest, line.greatest());
    }
    for (Limit limit : limits) {
      if (limit.widensAxis() && least <= greatest) {
        least = Math.min(least, limit.value());
        greatest = Math.max(greatest, limit.value());
      }
    }
    return ValueAxis.holding(least, greatest, strip.shortest(stack.charts().units()));
  }

  private void paintTimeGrid(Graphics2D g) {
    g.setStroke(style.thin());
    for (TimeTick tick : axis.ticks()) {
      g.setColor(tick.newDay() ? Palette.FRAME : Palette.GRID);
      double x = axis.x(tick);
      g.draw(new Line2D.Double(x, plot.y, x, plot.getMaxY()));
    }
  }

  private void paintValueGrid(Graphics2D g, ValueAxis values) {
    g.setFont(style.plain());
    g.setStroke(style.thin());
    FontMetrics metrics = g.getFontMetrics();
    double perMark = plot.getHeight() / values.steps();
    int every = (int) Math.max(1, Math.ceil(LABEL_SPACING * metrics.getAscent() / perMark));
    for (int i = values.firstWritten(every); i <= values.steps(); i += every) {
      double y = y(values.mark(i), values);
      g.setColor(Palette.GRID);
      g.draw(new Line2D.Double(plot.x, y, plot.getMaxX(), y));
      String label = values.label(i, every);
      g.setColor(Palette.FAINT_INK);
      g.drawString(
          label,
          plot.x - style.scaled(6) - metrics.stringWidth(label),
          (float) (y + metrics.getAscent() / 2.0 - style.scaled(1)));
    }
  }

  private void paintLimit(Graphics2D g, Limit limit, ValueAxis values) {
    double y = y(limit.value(), values);
    g.setColor(Palette.FAINT_INK);
    g.setStroke(style.dashed(style.thin().getLineWidth()));
    g.draw(new Line2D.Double(plot.x, y, plot.getMaxX(), y));
  }

  /** In a strip flatter than two lines of text the name would stand in the next strip. */
  private boolean hasRoomForName(Graphics2D g) {
    return plot.height >= 2 * g.getFontMetrics(style.plain()).getHeight();
  }

  /** Painted over the lines, or a reading near its limit would strike the limit's name through. */
  private void paintLimitName(Graphics2D g, Limit limit, ValueAxis values) {
    g.setFont(style.plain().deriveFont(style.textSize() * 0.85f));
    FontMetrics metrics = g.getFontMetrics();
    int width = metrics.stringWidth(limit.name());
    double y = y(limit.value(), values);
    boolean above = y - plot.y > metrics.getHeight();
    double top = above ? y - metrics.getHeight() : y + 1;
    double left = plot.getMaxX() - width - style.scaled(4);
    g.setColor(Palette.VEIL);
    g.fill(new Rectangle2D.Double(left - 2, top, width + 4, metrics.getHeight() - 1));
    g.setColor(Palette.FAINT_INK);
    g.drawString(limit.name(), (float) left, (float) (top + metrics.getAscent()));
  }

  private double y(double value, ValueAxis values) {
    return plot.getMaxY() - (value - values.low()) / (values.high() - values.low()) * plot.height;
  }

  private void paintLines(Graphics2D surface, Map<Line, Polyline> lines, ValueAxis values) {
    if (lines.isEmpty() || plot.height < 2) {
      return;
    }
    XYChart chart = new XYChart(plot.width, plot.height);
    XYStyler styler = chart.getStyler();
    styler.setLegendVisible(false);
    styler.setChartTitleVisible(false);
    styler.setChartPadding(0);
    styler.setPlotContentSize(1);
    styler.setPlotBorderVisible(false);
    styler.setChartBackgroundColor(CLEAR);
    styler.setPlotBackgroundColor(CLEAR);
    styler.setAntiAlias(true);
    styler
        .setAxisTitlesVisible(false)
        .setAxisTicksVisible(false)
        .setPlotMargin(0)
        .setPlotGridLinesVisible(false)
        .setPlotTicksMarksVisible(false)
        .setXAxisMin(0.0)
        .setXAxisMax((double) stack.range().lengthMs())
        .setYAxisMin(values.low())
        .setYAxisMax(values.high());
    lines.forEach(
        (line, one) -> {
          XYSeries series = chart.addSeries(line.name(), one.x(), one.y());
          series.setMarker(SeriesMarkers.NONE);
          series.setLineColor(line.color());
          series.setLineStyle(style.strokeOf(line, style.lineWidth()));
        });
    Graphics2D g = (Graphics2D) surface.create(plot.x, plot.y, plot.width, plot.height);
    chart.paint(g, plot.width, plot.height);
    g.dispose();
  }

  private void paintMarks(Graphics2D g, Map<Line, Polyline> lines, ValueAxis values) {
    double perMs = (double) plot.width / stack.range().lengthMs();
    lines.forEach(
        (line, one) -> {
          for (int i : marks.placesOn(line, one, stack.range().lengthMs())) {
            marks.paint(g, line, plot.x + one.x()[i] * perMs, y(one.y()[i], values));
          }
        });
  }
}
