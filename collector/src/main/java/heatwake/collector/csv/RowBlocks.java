package heatwake.collector.csv;

import heatwake.analysis.timeline.Timeline;
import heatwake.collector.mistake.MistakeException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The rows of a file as blocks without a gap, within which time runs forwards. A logger that writes
 * over its oldest rows hands out its newest block first; so do files that were put together in the
 * wrong order. A clock that was set back gives blocks too, but those overlap, or do not meet.
 */
final class RowBlocks {
  /** Fewer rows to a block, on the average, are rows out of place; ours. */
  private static final int FEWEST_ROWS = 3;

  private final List<Block> blocks = new ArrayList<>();
  private final int rows;
  private final double gapMs;

  private RowBlocks(long[] timesMs, long[] lines) {
    rows = timesMs.length;
    gapMs = Timeline.GAP_INTERVALS * usualMs(timesMs);
    for (int i = 0; i < timesMs.length; i++) {
      long passedMs = i == 0 ? Long.MAX_VALUE : timesMs[i] - timesMs[i - 1];
      if (passedMs < 0 || passedMs > gapMs) {
        blocks.add(new Block(blocks.size(), timesMs[i], lines[i]));
      }
      blocks.get(blocks.size() - 1).endMs = timesMs[i];
    }
  }

  /**
   * A step back.
   *
   * @param fromMs time of the last row before it, UTC milliseconds
   * @param toMs time of the first row after it
   * @param line its line
   */
  record Back(long fromMs, long toMs, long line) {}

  private static final class Block {
    private final int place;
    private final long startMs;
    private final long line;
    private long endMs;

    Block(int place, long startMs, long line) {
      this.place = place;
      this.startMs = startMs;
      this.line = line;
    }
  }

  /**
   * Time that runs backwards is only told from a clock that was set by all rows of the file, so
   * such a file is read once more.
   *
   * @throws MistakeException if its rows lie in blocks out of order
   */
  static void refuseOutOfOrder(Path csv) {
    if (!Files.isRegularFile(csv)) {
      return;
    }
    Optional<RowBlocks.Back> outOfOrder;
    try (CsvRows rows = CsvRows.open(csv)) {
      outOfOrder = of(rows).outOfOrder();
    } catch (MistakeException unreadable) {
      // That has been said, or is to be said, of the row itself.
      return;
    }
    outOfOrder.ifPresent(
        back -> {
          throw MistakeException.at(
              csv.toString(),
              back.line(),
              "the rows lie in blocks out of order: time goes back from "
                  + CsvTime.format(back.fromMs())
                  + " to "
                  + CsvTime.format(back.toMs())
                  + ", and in order of time the blocks follow each other without a gap; sort the"
                  + " rows by time");
        });
  }

  /** Reads the times of all rows. */
  static RowBlocks of(CsvRows rows) {
    long[] timesMs = new long[1024];
    long[] lines = new long[1024];
    int count = 0;
    for (Optional<CsvRows.Row> row = rows.next(); row.isPresent(); row = rows.next()) {
      if (count == timesMs.length) {
        timesMs = Arrays.copyOf(timesMs, 2 * count);
        lines = Arrays.copyOf(lines, 2 * count);
      }
      timesMs[count] = row.get().timeMs();
      lines[count++] = row.get().line();
    }
    return new RowBlocks(Arrays.copyOf(timesMs, count), Arrays.copyOf(lines, count));
  }

  private static double usualMs(long[] timesMs) {
    double[] passedMs = new double[Math.max(0, timesMs.length - 1)];
    for (int i = 0; i < passedMs.length; i++) {
      passedMs[i] = Math.abs(timesMs[i + 1] - timesMs[i]);
    }
    return passedMs.length == 0 ? 0 : Median.withDefaults().evaluate(passedMs);
  }

  /**
   * The first step back, if in order of time the blocks are one run: none overlaps another, and
   * those that are only then neighbours meet as rows do.
   */
  Optional<Back> outOfOrder() {
    if (FEWEST_ROWS * blocks.size() > rows) {
      return Optional.empty();
    }
    Optional<Back> back = firstBack();
    List<Block> sorted = new ArrayList<>(blocks);
    sorted.sort(Comparator.comparingLong(block -> block.startMs));
    for (int i = 1; i < sorted.size() && back.isPresent(); i++) {
      Block before = sorted.get(i - 1);
      Block after = sorted.get(i);
      long apartMs = after.startMs - before.endMs;
      boolean wereNeighbours = after.place == before.place + 1;
      if (apartMs <= 0 || (!wereNeighbours && apartMs > gapMs)) {
        return Optional.empty();
      }
    }
    return back;
  }

  private Optional<Back> firstBack() {
    for (int i = 1; i < blocks.size(); i++) {
      Block before = blocks.get(i - 1);
      Block after = blocks.get(i);
      if (after.startMs < before.endMs) {
        return Optional.of(new Back(before.endMs, after.startMs, after.line));
      }
    }
    return Optional.empty();
  }
}
