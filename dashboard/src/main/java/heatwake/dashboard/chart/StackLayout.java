package heatwake.dashboard.chart;

import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the parts of a stack of strips stand.
 *
 * @param band phases
 * @param flags one lane for each row of flags; of no height when there are none
 * @param notes notes; of no height when there are none
 * @param strips strips, from top to bottom
 * @param axis time labels, and below them day, phases and zone
 */
record StackLayout(
    Rectangle band, Rectangle flags, Rectangle notes, List<Place> strips, Rectangle axis) {

  /** A strip's heading and plot. */
  record Place(Strip strip, Rectangle heading, Rectangle plot) {}

  static StackLayout of(StripStack stack, int width, int height) {
    ChartStyle style = stack.style();
    int left = style.scaled(54);
    int plotWidth = Math.max(1, width - left - style.scaled(12));
    int gap = style.scaled(3);
    int y = style.scaled(2);
    Rectangle band = new Rectangle(left, y, plotWidth, style.scaled(18));
    y += band.height + gap;
    int rows = stack.flagRows().size();
    Rectangle flags = new Rectangle(left, y, plotWidth, rows * style.scaled(16));
    y += rows == 0 ? 0 : flags.height + gap;
    boolean hasNotes = !stack.charts().recording().notes().isEmpty();
    Rectangle notes = new Rectangle(left, y, plotWidth, hasNotes ? style.scaled(16) : 0);
    y += notes.height;
    int axisHeight = style.scaled(36);
    int heading = style.scaled(20);

    int forStrips = Math.max(0, height - axisHeight - y);
    int lanes = style.scaled(16);
    List<Strip> strips = stack.strips();
    int fixed = 0;
    int plots = 0;
    for (Strip strip : strips) {
      fixed += heading + (strip.isLanes() ? lanes * stack.charts().linesOf(strip).size() : 0);
      plots += strip.isLanes() ? 0 : 1;
    }
    int plotHeight = plots == 0 ? 0 : Math.max(1, (forStrips - fixed) / plots);
    List<Place> places = new ArrayList<>();
    for (Strip strip : strips) {
      int its = strip.isLanes() ? lanes * stack.charts().linesOf(strip).size() : plotHeight;
      places.add(
          new Place(
              strip,
              new Rectangle(left, y, plotWidth, heading),
              new Rectangle(left, y + heading, plotWidth, its)));
      y += heading + its;
    }
    return new StackLayout(
        band, flags, notes, places, new Rectangle(left, y, plotWidth, axisHeight));
  }

  /** Horizontal place of a moment. */
  double x(long ms, TimeRange range) {
    return band.x + range.shareAt(ms) * band.width;
  }

  /** The moment at a horizontal place. */
  long ms(double x, TimeRange range) {
    return range.fromMs() + Math.round((x - band.x) / band.width * range.lengthMs());
  }
}
