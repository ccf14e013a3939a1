package heatwake.collector.store;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * How many readings were read of each stretch of a run: what a later look needs in order to know
 * which stretches have got more since.
 *
 * <p>The program only ever adds readings. So a stretch with as many as before holds the same ones,
 * and if there are as many as before up to a moment, so there are up to every moment before it.
 */
final class BlockCounts {
  /**
   * A block is 2^19 ms, 8.7 min: the last two, which are read each time, are then a small part of a
   * night, and hold most readings that come a little late.
   */
  private static final int BLOCK_BITS = 19;

  private final NavigableMap<Long, Long> counts;
  private long block = Long.MIN_VALUE;
  private long inBlock;

  BlockCounts() {
    this(new TreeMap<>());
  }

  private BlockCounts(NavigableMap<Long, Long> counts) {
    this.counts = counts;
  }

  /** Takes note of one reading; to be called in order of time. */
  void add(long timeMs) {
    long now = timeMs >> BLOCK_BITS;
    if (now != block) {
      close();
      block = now;
    }
    inBlock++;
  }

  private void close() {
    if (inBlock > 0) {
      counts.merge(block, inBlock, Long::sum);
      inBlock = 0;
    }
  }

  /** What is held of the time before a moment at which a block begins. */
  BlockCounts before(long ms) {
    close();
    return new BlockCounts(new TreeMap<>(counts.headMap(ms >> BLOCK_BITS)));
  }

  /** The beginnings of the blocks that hold readings, without the last, up to a moment. */
  List<Long> settledStarts(long untilMs) {
    close();
    List<Long> starts = new ArrayList<>(counts.size());
    counts.keySet().forEach(one -> starts.add(one << BLOCK_BITS));
    List<Long> settled = starts.subList(0, Math.max(0, starts.size() - 1));
    return settled.stream().filter(one -> one <= untilMs).toList();
  }

  /** Readings held of the time before a moment at which a block begins. */
  long countBefore(long ms) {
    close();
    return counts.headMap(ms >> BLOCK_BITS).values().stream().mapToLong(Long::longValue).sum();
  }
}
