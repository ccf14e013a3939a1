package heatwake.analysis.rule.water;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.descriptive.Median;

/**
 * How a reading of the water circuit moved while the pump ran.
 *
 * @param startMs middle of the first block, UTC milliseconds
 * @param endMs middle of the last block
 * @param first value of the fitted line at the first block, SI
 * @param last value of the fitted line at the last block
 * @param standard standard uncertainty of the difference, from the scatter about the line
 * @param agreement share of all pairs of blocks that move the way of the line less those that move
 *     against it (Kendall's tau), 0 to 1
 * @param largestStep greatest movement from one block to the next, as a share of the whole
 */
record PumpTrend(
    long startMs,
    long endMs,
    double first,
    double last,
    double standard,
    double agreement,
    double largestStep) {

  /** Block length, long against pump ripple and noise, short against the loading of a filter. */
  private static final double BLOCK_S = 600;

  private static final int MOST_BLOCKS = 60;
  private static final int FEWEST_BLOCKS = 8;

  /** The water is left this long to settle after the pump starts. */
  private static final long SETTLING_MS = 120_000;

  /** Makes a median absolute deviation the standard deviation of normal scatter. */
  private static final double MAD_TO_STANDARD = 1.4826;

  private record Block(double timeS, double value) {}

  /**
   * The trend of a channel by the method of Theil and Sen (median of all slopes), which a valve
   * turned for a while or a burst of bad readings does not move.
   *
   * @return empty if the pump was not seen running for at least {@value #FEWEST_BLOCKS} blocks
   */
  static Optional<PumpTrend> of(Evidence evidence, Channel channel) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    List<Block> blocks = blocks(evidence, channel);
    return blocks.size() < FEWEST_BLOCKS ? Optional.empty() : Optional.of(fit(timeline, blocks));
  }

  private static List<Block> blocks(Evidence evidence, Channel channel) {
    Timeline timeline = evidence.timeline();
    double[] values = timeline.of(channel);
    double runS = (evidence.recording().endMs() - evidence.recording().startMs()) / 1e3;
    double blockS = Math.max(BLOCK_S, runS / MOST_BLOCKS);
    int perBlock = Math.max(1, (int) Math.round(blockS / timeline.stepS()));
    List<Block> blocks = new ArrayList<>();
    boolean waterRan = false;
    double sum = 0;
    double times = 0;
    int count = 0;
    for (PhaseSpan span : evidence.phases()) {
      boolean runs = span.phase() != Phase.OFF && span.phase() != Phase.UNKNOWN;
      if (runs) {
        int from = timeline.firstAtOrAfter(span.startMs() + (waterRan ? 0 : SETTLING_MS));
        int to = Math.min(values.length, timeline.firstAtOrAfter(span.endMs()));
        for (int i = from; i < to; i++) {
          if (!Double.isNaN(values[i])) {
            sum += values[i];
            times += i * timeline.stepS();
            count++;
            if (count == perBlock) {
              blocks.add(new Block(times / count, sum / count));
              sum = 0;
              times = 0;
              count = 0;
            }
          }
        }
      }
      waterRan = runs;
    }
    return blocks;
  }

  private static PumpTrend fit(Timeline timeline, List<Block> blocks) {
    int n = blocks.size();
    double[] slopes = new double[n * (n - 1) / 2];
    int k = 0;
    int up = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        double difference = blocks.get(j).value() - blocks.get(i).value();
        slopes[k++] = difference / (blocks.get(j).timeS() - blocks.get(i).timeS());
        up += (int) Math.signum(difference);
      }
    }
    double slope = Median.withDefaults().evaluate(slopes);
    double level =
        Median.withDefaults()
            .evaluate(blocks.stream().mapToDouble(b -> b.value() - slope * b.timeS()).toArray());
    double scatter =
        MAD_TO_STANDARD
            * Median.withDefaults()
                .evaluate(
                    blocks.stream()
                        .mapToDouble(b -> Math.abs(b.value() - level - slope * b.timeS()))
                        .toArray());
    double startS = blocks.get(0).timeS();
    double endS = blocks.get(n - 1).timeS();
    double whole = slope * (endS - startS);
    double step = 0;
    for (int i = 1; i < n; i++) {
      step = Math.max(step, Math.abs(blocks.get(i).value() - blocks.get(i - 1).value()));
    }
    return new PumpTrend(
        timeline.startMs() + Math.round(startS * 1e3),
        timeline.startMs() + Math.round(endS * 1e3),
        level + slope * startS,
        level + slope * endS,
        // Variance of the slope of n evenly spaced points, times the length squared: 12 s2 / n.
        scatter * Math.sqrt(12.0 / n),
        Math.abs(up) / (double) slopes.length,
        whole == 0 ? 1 : step / Math.abs(whole));
  }

  double change() {
    return last - first;
  }

  /** Change as a share of the first value. */
  double relativeChange() {
    return change() / first;
  }

  double lengthS() {
    return (endMs - startMs) / 1e3;
  }
}
