package heatwake.analysis.electric;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Screening;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;

/**
 * Power as a kWh meter lets it be seen. At each reading the energy lies between what the register
 * shows and one step more; of all courses that this permits the one with the fewest changes of
 * power is taken. Where that is not enough, {@link #leastJ} and {@link #mostJ} say what is sure.
 *
 * <p>A silence longer than {@value Timeline#GAP_INTERVALS} usual intervals, and a meter that began
 * again, leave the power open: the energy goes on being counted, but not when it was taken.
 */
public final class CountedPower {
  private final EnergyCounter counter;
  private final Timeline timeline;
  private final double[] powerW;

  private CountedPower(EnergyCounter counter, Timeline timeline) {
    this.counter = counter;
    this.timeline = timeline;
    this.powerW = Timeline.unknown(timeline.size());
    for (int r = 0; r < counter.size(); ) {
      int end = r + 1;
      while (end < counter.size() && !counter.beginsAnew(end)) {
        end++;
      }
      draw(r, end);
      r = end;
    }
    forgetSilences();
  }

  /** Reads the energy channel, if it is there and moves. */
  public static Optional<CountedPower> of(Recording recording, Timeline timeline) {
    return recording
        .of(Channel.ENERGY)
        .map(series -> EnergyCounter.of(Screening.possible(series)))
        .filter(counter -> counter.size() >= 2 && counter.stepJ() > 0)
        .map(counter -> new CountedPower(counter, timeline));
  }

  /** One meter's readings, from {@code from} up to {@code to}. */
  private void draw(int from, int to) {
    double[] at = new double[to - from];
    double[] low = new double[at.length];
    double[] high = new double[at.length];
    for (int r = from; r < to; r++) {
      at[r - from] = (counter.timeMs(r) - timeline.startMs()) / 1e3;
      low[r - from] = counter.totalJ(r);
      high[r - from] = counter.totalJ(r) + counter.stepJ();
    }
    TautString line = TautString.through(at, low, high);
    for (int k = 0; k + 1 < line.size(); k++) {
      double begin = at[line.gate(k)];
      double end = at[line.gate(k + 1)];
      double slope = (line.height(k + 1) - line.height(k)) / (end - begin);
      Arrays.fill(powerW, firstAfter(begin), firstAfter(end), Math.max(0, slope));
    }
  }

  /** The first instant whose step to the next has its middle at or after a time. */
  private int firstAfter(double seconds) {
    double instant = Math.ceil(seconds / timeline.stepS() - 0.5);
    return (int) Math.max(0, Math.min(timeline.size(), instant));
  }

  private void forgetSilences() {
    long longestMs = Timeline.GAP_INTERVALS * timeline.intervalMs(Channel.ENERGY);
    for (int r = 1; r < counter.size(); r++) {
      if (counter.timeMs(r) - counter.timeMs(r - 1) > longestMs) {
        int from = timeline.firstAtOrAfter(counter.timeMs(r - 1));
        int to = timeline.firstAtOrAfter(counter.timeMs(r));
        Arrays.fill(powerW, from, to, Double.NaN);
      }
    }
  }

  /** Power from each instant to the next; NaN where it is open. Shared, not to be written to. */
  public double[] powerW() {
    return powerW;
  }

  /** Step of the register. */
  public double stepJ() {
    return counter.stepJ();
  }

  /** Usual time between readings. */
  public double intervalS() {
    return timeline.intervalMs(Channel.ENERGY) / 1e3;
  }

  /** The first instant by which the register had been read. */
  public int firstInstant() {
    return timeline.firstAtOrAfter(counter.timeMs(0));
  }

  /** The last instant before which it was read. */
  public int lastInstant() {
    return timeline.indexAt(counter.timeMs(counter.size() - 1));
  }

  /** Energy surely taken from one instant to another. */
  public double leastJ(int from, int to) {
    int first = firstReading(timeline.timeMs(from), false);
    int last = firstReading(timeline.timeMs(to), true);
    return first < 0 || last < 0 || last <= first
        ? 0
        : Math.max(0, betweenJ(first, last) - counter.stepJ());
  }

  /** The most that can have been taken from one instant to another; infinite if not known. */
  public double mostJ(int from, int to) {
    int first = firstReading(timeline.timeMs(from), true);
    int last = firstReading(timeline.timeMs(to), false);
    if (first < 0 || last < 0) {
      return Double.POSITIVE_INFINITY;
    }
    for (int r = first + 1; r <= last; r++) {
      if (counter.beginsAnew(r)) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return betweenJ(first, last) + counter.stepJ();
  }

  private double betweenJ(int first, int last) {
    return counter.totalJ(last) - counter.totalJ(first);
  }

  /** The reading next to a time, at or before it or at or after it; -1 if there is none. */
  private int firstReading(long timeMs, boolean before) {
    int low = 0;
    int high = counter.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      boolean passed = before ? counter.timeMs(middle) > timeMs : counter.timeMs(middle) >= timeMs;
      if (passed) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    int found = before ? low - 1 : low;
    return found < counter.size() ? found : -1;
  }
}
