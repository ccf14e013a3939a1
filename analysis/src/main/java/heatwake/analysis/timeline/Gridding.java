package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Series;
import java.util.Arrays;

/** Brings one series onto the grid; see {@link Timeline} for what it does between readings. */
final class Gridding {
  /**
   * A state whose successive readings are equal less often than this speaks only on change; ours.
   */
  private static final double REPEATS_OF_A_PACED_STATE = 0.5;

  private final Series series;
  private final long startMs;
  private final long stepMs;
  private final int size;
  private final long longestBridgeMs;
  private final boolean averages;

  Gridding(Series series, long intervalMs, long startMs, long stepMs, int size) {
    this.series = series;
    this.startMs = startMs;
    this.stepMs = stepMs;
    this.size = size;
    this.longestBridgeMs = Math.max(Timeline.GAP_INTERVALS * intervalMs, stepMs);
    this.averages = intervalMs * 2 <= stepMs;
  }

  double[] grid() {
    double[] grid = new double[size];
    Arrays.fill(grid, Double.NaN);
    if (series.channel().quantity() == Quantity.STATE) {
      hold(grid, speaksOnChange() ? Long.MAX_VALUE : longestBridgeMs);
      return grid;
    }
    if (averages) {
      averageIntoCells(grid);
    }
    interpolate(grid);
    placeLoneReadings(grid);
    return grid;
  }

  private boolean speaksOnChange() {
    int repeats = 0;
    for (int r = 1; r < series.size(); r++) {
      if (series.value(r) == series.value(r - 1)) {
        repeats++;
      }
    }
    return repeats < REPEATS_OF_A_PACED_STATE * Math.max(1, series.size() - 1);
  }

  private void hold(double[] grid, long longestMs) {
    int r = -1;
    for (int i = 0; i < size; i++) {
      long at = startMs + i * stepMs;
      while (r + 1 < series.size() && series.timeMs(r + 1) <= at) {
        r++;
      }
      if (r >= 0 && at - series.timeMs(r) <= longestMs) {
        boolean comesBack = r + 1 < series.size();
        boolean bridged =
            longestMs == Long.MAX_VALUE
                || (comesBack && series.timeMs(r + 1) - series.timeMs(r) <= longestMs);
        if (bridged || at - series.timeMs(r) < stepMs) {
          grid[i] = series.value(r);
        }
      }
    }
  }

  private void averageIntoCells(double[] grid) {
    int r = series.firstAtOrAfter(startMs - stepMs / 2);
    for (int i = 0; i < size; i++) {
      long end = startMs + i * stepMs + stepMs / 2;
      double sum = 0;
      int count = 0;
      while (r < series.size() && series.timeMs(r) < end) {
        sum += series.value(r++);
        count++;
      }
      if (count > 0) {
        grid[i] = sum / count;
      }
    }
  }

  private void interpolate(double[] grid) {
    int r = 0;
    for (int i = 0; i < size; i++) {
      long at = startMs + i * stepMs;
      while (r + 1 < series.size() && series.timeMs(r + 1) <= at) {
        r++;
      }
      long time = series.timeMs(r);
      if (!Double.isNaN(grid[i]) || at < time) {
        continue;
      }
      if (at == time) {
        grid[i] = series.value(r);
      } else if (r + 1 < series.size() && series.timeMs(r + 1) - time <= longestBridgeMs) {
        double share = (double) (at - time) / (series.timeMs(r + 1) - time);
        grid[i] = series.value(r) + share * (series.value(r + 1) - series.value(r));
      }
    }
  }

  /** A reading with silence beside it still speaks for the instant nearest to it. */
  private void placeLoneReadings(double[] grid) {
    for (int r = 0; r < series.size(); r++) {
      long time = series.timeMs(r);
      boolean silenceBefore = r == 0 || time - series.timeMs(r - 1) > longestBridgeMs;
      boolean silenceAfter =
          r + 1 == series.size() || series.timeMs(r + 1) - time > longestBridgeMs;
      if (silenceBefore || silenceAfter) {
        long nearest = Math.floorDiv(time - startMs + stepMs / 2, stepMs);
        if (nearest >= 0 && nearest < size && Double.isNaN(grid[(int) nearest])) {
          grid[(int) nearest] = series.value(r);
        }
      }
    }
  }
}
