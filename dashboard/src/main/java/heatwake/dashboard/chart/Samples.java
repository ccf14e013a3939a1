package heatwake.dashboard.chart;

import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import heatwake.dashboard.present.DisplayUnit;
import java.util.List;

/** Values over time as a line draws them: in the unit shown, NaN where the line breaks. */
interface Samples {
  int size();

  long timeMs(int i);

  /** Value in the unit shown. */
  double value(int i);

  /** Two neighbours further apart than this are not joined. */
  long gapMs();

  /** Index of the first value at or after a time. */
  int firstAtOrAfter(long ms);

  /** The readings of a channel. One that cannot be true of its channel breaks the line. */
  static Samples of(Series series, DisplayUnit unit) {
    long gap = Timeline.GAP_INTERVALS * Timeline.usualIntervalMs(series);
    return new Samples() {
      @Override
      public int size() {
        return series.size();
      }

      @Override
      public long timeMs(int i) {
        return series.timeMs(i);
      }

      @Override
      public double value(int i) {
        double si = series.value(i);
        boolean possible = series.channel().isPossible(series.channel().storedUnit().fromSi(si));
        return possible ? unit.fromSi(si) : Double.NaN;
      }

      @Override
      public long gapMs() {
        return gap;
      }

      @Override
      public int firstAtOrAfter(long ms) {
        return series.firstAtOrAfter(ms);
      }
    };
  }

  /** A derived quantity. */
  static Samples of(Trace trace, DisplayUnit unit) {
    return new Samples() {
      @Override
      public int size() {
        return trace.values().length;
      }

      @Override
      public long timeMs(int i) {
        return trace.startMs() + i * trace.stepMs();
      }

      @Override
      public double value(int i) {
        return unit.fromSi(trace.values()[i]);
      }

      @Override
      public long gapMs() {
        return trace.stepMs() * 3 / 2;
      }

      @Override
      public int firstAtOrAfter(long ms) {
        long index = -Math.floorDiv(trace.startMs() - ms, trace.stepMs());
        return (int) Math.max(0, Math.min(size(), index));
      }
    };
  }

  /** Heat the nameplate promises, level over each steady span and broken between. */
  static Samples ofExpectedHeat(List<SteadySpan> steady, DisplayUnit unit) {
    List<SteadySpan> known =
        steady.stream().filter(span -> span.expectedHeatW().isPresent()).toList();
    return new Samples() {
      @Override
      public int size() {
        return 3 * known.size();
      }

      @Override
      public long timeMs(int i) {
        SteadySpan span = known.get(i / 3);
        return i % 3 == 0 ? span.startMs() : i % 3 == 1 ? span.endMs() : span.endMs() + 1;
      }

      @Override
      public double value(int i) {
        return i % 3 == 2
            ? Double.NaN
            : unit.fromSi(known.get(i / 3).expectedHeatW().orElseThrow().value());
      }

      @Override
      public long gapMs() {
        return Long.MAX_VALUE;
      }

      @Override
      public int firstAtOrAfter(long ms) {
        int i = 0;
        while (i < size() && timeMs(i) < ms) {
          i++;
        }
        return i;
      }
    };
  }
}
