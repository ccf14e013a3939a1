package heatwake.collector.store;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;

/**
 * Finds the bulk of a run's stamps, where nothing else tells which are right. Stamps less than a
 * week apart belong together. The bulk are those that hold the quartiles and all that lies between
 * them; what is further from it than a week, and than the bulk itself lasts, is a stamp that is
 * wrong. So less than half can ever be left out, and runs of many days stay whole, as do long runs
 * with long gaps. The week is ours.
 */
final class StampBulk {
  private static final long TOGETHER_MS = TimeUnit.DAYS.toMillis(7);

  private final ReadingTable readings;
  private final long run;

  /** Readings with no week between two of them. */
  private record Cluster(long firstMs, long lastMs, long count) {}

  StampBulk(ReadingTable readings, long run) {
    this.readings = readings;
    this.run = run;
  }

  /** The stretch of time that holds the bulk; all of it where nothing lies far off. */
  StampWindow window() throws SQLException {
    OptionalLong firstMs = readings.firstMs(run);
    if (firstMs.isEmpty()
        || readings.lastMs(run).getAsLong() - firstMs.getAsLong() <= TOGETHER_MS) {
      return StampWindow.ALL;
    }
    List<Cluster> clusters = clusters(firstMs.getAsLong());
    long total = clusters.stream().mapToLong(Cluster::count).sum();
    int from = holding(clusters, (total - 1) / 4);
    int to = holding(clusters, total - 1 - (total - 1) / 4);
    while (true) {
      long apartMs =
          Math.max(TOGETHER_MS, clusters.get(to).lastMs() - clusters.get(from).firstMs());
      if (from > 0 && gapMs(clusters, from - 1) <= apartMs) {
        from--;
      } else if (to + 1 < clusters.size() && gapMs(clusters, to) <= apartMs) {
        to++;
      } else {
        break;
      }
    }
    return new StampWindow(
        from == 0 ? Long.MIN_VALUE : clusters.get(from).firstMs(),
        to + 1 == clusters.size() ? Long.MAX_VALUE : clusters.get(to).lastMs() + 1);
  }

  /** By leaps of a week, so that a long run costs a few look-ups. */
  private List<Cluster> clusters(long runFirstMs) throws SQLException {
    List<Cluster> clusters = new ArrayList<>();
    OptionalLong next = OptionalLong.of(runFirstMs);
    while (next.isPresent()) {
      long firstMs = next.getAsLong();
      long lastMs = firstMs;
      long leapMs = readings.lastMs(run, lastMs + TOGETHER_MS + 1).getAsLong();
      while (leapMs > lastMs) {
        lastMs = leapMs;
        leapMs = readings.lastMs(run, lastMs + TOGETHER_MS + 1).getAsLong();
      }
      clusters.add(new Cluster(firstMs, lastMs, readings.countBetween(run, firstMs, lastMs + 1)));
      next = readings.firstMs(run, lastMs + 1);
    }
    return clusters;
  }

  /** The cluster that holds the reading of some rank, counted from nought. */
  private static int holding(List<Cluster> clusters, long rank) {
    int index = 0;
    long upTo = clusters.get(0).count();
    while (upTo <= rank) {
      index++;
      upTo += clusters.get(index).count();
    }
    return index;
  }

  /** Time between a cluster and the next. */
  private static long gapMs(List<Cluster> clusters, int index) {
    return clusters.get(index + 1).firstMs() - clusters.get(index).lastMs();
  }
}
