package heatwake.dashboard.chart;

import heatwake.dashboard.present.DisplayUnit;
import java.awt.BasicStroke;
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
 * Paints one strip. The lines are XChart's; heading, grid and axes are painted here, because
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
    paintHeading(g, List.copyOf(samples.keySet()));
    if (strip.isLanes()) {
      paintTimeGrid(g);
      paintLanes(g, samples);
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
      shown.forEach(limit -> paintLimitName(g, limit, values));
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

  private void paintHeading(Graphics2D g, List<Line> lines) {
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
      g.setStroke(strokeOf(line, style.lineWidth() * 1.6f));
      double y = baseline - style.scaled(4);
      g.draw(new Line2D.Double(x, y, x + stroke * squeeze, y));
      marks.paint(g, line, x + stroke * squeeze / 2, y);
      x += (stroke + style.scaled(5)) * squeeze;
      g.setColor(Palette.INK);
      g.drawString(line.name(), x, baseline);
      x += g.getFontMetrics().stringWidth(line.name()) + style.scaled(15) * squeeze;
    }
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
    g.setStroke(dashed(style.thin().getLineWidth()));
    g.draw(new Line2D.Double(plot.x, y, plot.getMaxX(), y));
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
          series.setLineStyle(strokeOf(line, style.lineWidth()));
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

  private BasicStroke strokeOf(Line line, float width) {
    return line instanceof Line.OfExpectedHeat
        ? dashed(width)
        : new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  private BasicStroke dashed(float width) {
    return new BasicStroke(
        width,
        BasicStroke.CAP_BUTT,
        BasicStroke.JOIN_ROUND,
        10,
        new float[] {style.scaled(6), style.scaled(4)},
        0);
  }

  private void paintLanes(Graphics2D g, Map<Line, Samples> lanes) {
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
    TimeRange range = stack.range();
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
    TimeRange range = stack.range();
    double left = place.x + Math.max(0, range.shareAt(fromMs)) * place.width;
    double right = place.x + Math.min(1, range.shareAt(toMs)) * place.width;
    g.setColor(Palette.SKY);
    g.fill(new Rectangle2D.Double(left, place.y, Math.max(1, right - left), place.height));
  }
}
