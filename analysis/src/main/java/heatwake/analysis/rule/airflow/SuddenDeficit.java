package heatwake.analysis.rule.airflow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Air at the coil that went down against outdoor air while the heater ran, and stayed down: a door
 * that was shut, a cover, the wind that turned. Earlier running is the reference, so the errors of
 * the two probes drop out, as against a rest; what counts still is the scatter of both stretches
 * and what shade, gusts and clouds shift the probes by within an hour.
 *
 * <p>Told from what looks alike: with sun on the outdoor probe that one rises; in a front the
 * outdoor probe comes after, however slowly; gusts do not hold for half an hour and are met before
 * as well; a probe that slipped has no witness.
 *
 * @param before how far below outdoor air it was until then, K
 * @param since the running since then, as long as it lasted
 */
record SuddenDeficit(double before, AirDeficit since) {
  private static final long BLOCK_MS = 600_000;

  /** Half a block makes its mean, s. */
  private static final double SHORTEST_S = 300;

  /** Blocks without a break for which it has to last: half an hour; ours. */
  private static final int LASTING = 3;

  /** Blocks it may take to come: half an hour, for a door and a slow probe; ours. */
  private static final int COMING = 3;

  /** Blocks that are looked back on: an hour. What is met within it is no news; ours. */
  private static final int LOOKED_BACK = 6;

  /** Gusts and clouds shift two air probes by this within an hour, k = 1; ours. */
  static final double WANDER_K = 1.0;

  /** The outdoor probe has to stand meanwhile: it moves by less than this part of it; ours. */
  private static final double OUTDOORS_SHARE = 0.5;

  /**
   * The first that lasts.
   *
   * @param settled running
   * @param materialK least growth that counts, K
   */
  static Optional<SuddenDeficit> of(Evidence evidence, SettledInstants settled, double materialK) {
    return new Finder(evidence, settled, materialK).first();
  }

  private static final class Finder {
    private final Timeline timeline;
    private final SettledInstants settled;
    private final ColderAirWitness witness;
    private final double materialK;
    private final double pairK;
    private final List<Optional<AirDeficit>> blocks = new ArrayList<>();

    Finder(Evidence evidence, SettledInstants settled, double materialK) {
      this.timeline = evidence.timeline();
      this.settled = settled;
      this.materialK = materialK;
      this.witness = new ColderAirWitness(evidence, settled);
      long endMs = timeline.startMs() + timeline.size() * timeline.stepMs();
      for (long from = timeline.startMs(); from < endMs; from += BLOCK_MS) {
        blocks.add(AirDeficit.between(timeline, settled, SHORTEST_S, from, from + BLOCK_MS));
      }
      double roomK = timeline.meanBetween(Channel.AIR_IN, timeline.startMs(), endMs).orElse(0);
      this.pairK = AirProbes.standardK(evidence, roomK);
    }

    Optional<SuddenDeficit> first() {
      for (int last = 0; last < blocks.size(); last++) {
        if (blocks.get(last).isPresent()) {
          Estimate reference = reference(last);
          for (int begin = last + 1; begin <= last + 1 + COMING; begin++) {
            if (wentBack(begin)) {
              break;
            }
            if (lasts(reference, last, begin)) {
              return Optional.of(new SuddenDeficit(reference.value(), since(reference, begin)));
            }
          }
        }
      }
      return Optional.empty();
    }

    /** A gust comes and goes; a door that is being shut does not. */
    private boolean wentBack(int block) {
      return block < blocks.size()
          && blocks.get(block).isPresent()
          && blocks
              .get(block - 1)
              .filter(
                  one -> one.belowK().value() - WANDER_K > blocks.get(block).get().belowK().value())
              .isPresent();
    }

    /**
     * The furthest it was below outdoor air within the hour. Air that was warmer than outdoors by
     * more than the probes err is warm air of the place, not a reference: outdoor air is then.
     */
    private Estimate reference(int last) {
      return IntStream.rangeClosed(Math.max(0, last - LOOKED_BACK + 1), last)
          .mapToObj(blocks::get)
          .flatMap(Optional::stream)
          .map(AirDeficit::belowK)
          .reduce((one, other) -> one.value() > other.value() ? one : other)
          .filter(below -> below.value() > -2 * pairK)
          .orElse(new Estimate(-2 * pairK, 0));
    }

    private boolean lasts(Estimate reference, int last, int begin) {
      if (begin + LASTING > blocks.size()) {
        return false;
      }
      AirDeficit before = blocks.get(last).orElseThrow();
      double leastK = Double.POSITIVE_INFINITY;
      for (Optional<AirDeficit> block : blocks.subList(begin, begin + LASTING)) {
        if (block.isEmpty() || !isFurther(reference, block.get())) {
          return false;
        }
        leastK = Math.min(leastK, block.get().belowK().value() - before.belowK().value());
      }
      if (outdoorsMovedK(last, begin + LASTING) >= OUTDOORS_SHARE * leastK) {
        return false;
      }
      return AirDeficit.between(
              timeline, settled, SHORTEST_S, fromMs(begin), fromMs(begin + LASTING))
          .filter(after -> witness.agrees(before, after))
          .isPresent();
    }

    private boolean isFurther(Estimate reference, AirDeficit block) {
      Estimate more =
          new Estimate(
              block.belowK().value() - reference.value(),
              Math.hypot(WANDER_K, Math.hypot(block.belowK().standard(), reference.standard())));
      return Doubt.above(more, 0) && more.value() > materialK && block.belowK().value() > 0;
    }

    /** Between its coldest and its warmest block. */
    private double outdoorsMovedK(int from, int to) {
      DoubleSummaryStatistics outdoors =
          blocks.subList(from, to).stream()
              .flatMap(Optional::stream)
              .mapToDouble(AirDeficit::outdoorK)
              .summaryStatistics();
      return outdoors.getMax() - outdoors.getMin();
    }

    private AirDeficit since(Estimate reference, int begin) {
      int end = begin + LASTING;
      // Short rests and defrosts do not end it; air like before does.
      while (end < blocks.size()
          && blocks.get(end).map(block -> isFurther(reference, block)).orElse(true)) {
        end++;
      }
      return AirDeficit.between(timeline, settled, SHORTEST_S, fromMs(begin), fromMs(end))
          .orElseThrow();
    }

    private long fromMs(int block) {
      return timeline.startMs() + block * BLOCK_MS;
    }
  }
}
