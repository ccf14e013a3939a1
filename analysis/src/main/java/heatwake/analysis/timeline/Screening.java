package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Series;

/** Leaves out readings that cannot be true of their channel ({@link Channel#isPossible}). */
public final class Screening {
  private Screening() {}

  /** The possible readings of a series; the series itself where all are possible. */
  public static Series possible(Series series) {
    Channel channel = series.channel();
    Unit unit = channel.storedUnit();
    int first = 0;
    while (first < series.size() && channel.isPossible(unit.fromSi(series.value(first)))) {
      first++;
    }
    if (first == series.size()) {
      return series;
    }
    Series.Builder kept = Series.of(channel);
    for (int i = 0; i < series.size(); i++) {
      if (i < first || channel.isPossible(unit.fromSi(series.value(i)))) {
        kept.add(series.timeMs(i), series.value(i));
      }
    }
    return kept.build();
  }
}
