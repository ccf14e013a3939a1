package heatwake.dashboard.chart;

import java.util.Arrays;

/**
 * A line thinned to what a screen can show: the least and the greatest value of every column of
 * pixels, so that no spike is lost and no column holds more than two points. NaN breaks it.
 *
 * @param x milliseconds since the start of the range
 * @param y values in the unit shown
 * @param least least value within the range, NaN if there is none
 * @param greatest greatest value within the range, NaN if there is none
 */
@SuppressWarnings("ArrayRecordComponent") // handed straight to the painter, never compared
record Polyline(double[] x, double[] y, double least, double greatest) {
  boolean isEmpty() {
    return Double.isNaN(least);
  }

  /** Thins samples to a range that is {@code columns} pixels wide. */
  static Polyline of(Samples samples, TimeRange range, int columns) {
    return new Thinner(samples, range, Math.max(1, columns)).thin();
  }

  private static final class Thinner {
    private final Samples samples;
    private final TimeRange range;
    private final double columnMs;
    private final long breakMs;

    private double[] x = new double[1024];
    private double[] y = new double[1024];
    private int size;
    private double least = Double.NaN;
    private double greatest = Double.NaN;

    private long column = Long.MIN_VALUE;
    private int lowest;
    private int highest;

    Thinner(Samples samples, TimeRange range, int columns) {
      this.samples = samples;
      this.range = range;
      this.columnMs = (double) range.lengthMs() / columns;
      // A gap narrower than a column could not be seen, and would only cost points.
      this.breakMs = Math.max(samples.gapMs(), (long) (1.5 * columnMs));
    }

    Polyline thin() {
      int first = Math.max(0, samples.firstAtOrAfter(range.fromMs()) - 1);
      int last = Math.min(samples.size() - 1, samples.firstAtOrAfter(range.toMs()));
      long previousMs = Long.MIN_VALUE;
      boolean hole = false;
      for (int i = first; i <= last; i++) {
        long ms = samples.timeMs(i);
        double value = samples.value(i);
        if (Double.isNaN(value)) {
          hole = true;
          continue;
        }
        long longestJoined = hole ? (long) (1.5 * columnMs) : breakMs;
        hole = false;
        if (previousMs != Long.MIN_VALUE && ms - previousMs > longestJoined) {
          closeColumn();
          lift(previousMs);
        }
        take(i, ms, value);
        previousMs = ms;
      }
      closeColumn();
      if (isLoneEnd(size)) {
        add(previousMs + (long) Math.ceil(columnMs), y[size - 1]);
      }
      return new Polyline(Arrays.copyOf(x, size), Arrays.copyOf(y, size), least, greatest);
    }

    private void take(int i, long ms, double value) {
      if (range.contains(ms)) {
        least = Double.isNaN(least) ? value : Math.min(least, value);
        greatest = Double.isNaN(greatest) ? value : Math.max(greatest, value);
      }
      long its = (long) Math.floor((ms - range.fromMs()) / columnMs);
      if (its != column) {
        closeColumn();
        column = its;
        lowest = i;
        highest = i;
      } else {
        lowest = value < samples.value(lowest) ? i : lowest;
        highest = value > samples.value(highest) ? i : highest;
      }
    }

    private void closeColumn() {
      if (column == Long.MIN_VALUE) {
        return;
      }
      add(samples.timeMs(Math.min(lowest, highest)), samples.value(Math.min(lowest, highest)));
      if (lowest != highest) {
        add(samples.timeMs(Math.max(lowest, highest)), samples.value(Math.max(lowest, highest)));
      }
      column = Long.MIN_VALUE;
    }

    /** Ends a stretch; one that holds a single point becomes a dash one column wide. */
    private void lift(long lastMs) {
      if (isLoneEnd(size)) {
        add(lastMs + (long) Math.ceil(columnMs), y[size - 1]);
      }
      add(lastMs, Double.NaN);
    }

    private boolean isLoneEnd(int count) {
      return count == 1 || (count > 1 && Double.isNaN(y[count - 2]));
    }

    private void add(long ms, double value) {
      if (size == x.length) {
        x = Arrays.copyOf(x, size * 2);
        y = Arrays.copyOf(y, size * 2);
      }
      x[size] = ms - range.fromMs();
      y[size] = value;
      size++;
    }
  }
}
