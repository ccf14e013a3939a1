package heatwake.analysis.zero;

import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Scatter;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.statistics.descriptive.Median;

/**
 * Finds the settled part of a stretch: after a stop or a start the residual heat of the exchanger
 * and the lag of the clips fade, and only what follows tells the zero.
 *
 * <p>The stretch is cut into blocks. Settled begins with the first block from which two in a row
 * agree with the median of the later half; it is rejected while its two halves still differ. Limits
 * are ours.
 */
final class Settled {
  private static final double SHORTEST_BLOCK_S = 15;
  private static final int FEWEST_BLOCKS = 4;
  private static final double TOLERANCE_K = 0.02;
  private static final double TOLERANCE_IN_SCATTERS = 3;
  private static final double HALVES_TOLERANCE_K = 0.03;

  private final double[] differenceK;
  private final int block;

  /** A settled part, from index {@code from} up to but not including {@code to}. */
  record Part(int from, int to, Estimate differenceK) {}

  Settled(double[] differenceK, double stepS, int slowestIntervalInstants) {
    this.differenceK = differenceK;
    this.block = Math.max((int) Math.ceil(SHORTEST_BLOCK_S / stepS), slowestIntervalInstants);
  }

  /** The settled part between two indices, if there is one. */
  Optional<Part> within(int from, int to) {
    int blocks = (to - from) / block;
    if (blocks < FEWEST_BLOCKS) {
      return Optional.empty();
    }
    // Counted from the end, so that what is left over is early, unsettled readings.
    int first = to - blocks * block;
    double[] means = new double[blocks];
    for (int k = 0; k < blocks; k++) {
      means[k] = mean(first + k * block, first + (k + 1) * block);
    }
    int begin = firstSettled(means);
    while (blocks - begin >= FEWEST_BLOCKS) {
      Optional<Part> part = judged(first + begin * block, to);
      if (part.isPresent()) {
        return part;
      }
      begin += Math.max(1, (blocks - begin) / 4);
    }
    return Optional.empty();
  }

  private int firstSettled(double[] means) {
    double[] later =
        Arrays.stream(means, means.length / 2, means.length)
            .filter(m -> !Double.isNaN(m))
            .toArray();
    if (later.length == 0) {
      return means.length;
    }
    double median = Median.withDefaults().withCopy(true).evaluate(later);
    double[] off = Arrays.stream(later).map(m -> Math.abs(m - median)).toArray();
    // 1.4826 makes the median deviation that of a normal distribution's sigma.
    double tolerance =
        Math.max(TOLERANCE_K, TOLERANCE_IN_SCATTERS * 1.4826 * Median.withDefaults().evaluate(off));
    for (int k = 0; k + 1 < means.length; k++) {
      if (Math.abs(means[k] - median) <= tolerance
          && Math.abs(means[k + 1] - median) <= tolerance) {
        return k;
      }
    }
    return means.length;
  }

  private Optional<Part> judged(int from, int to) {
    int middle = (from + to) / 2;
    double early = mean(from, middle);
    double late = mean(middle, to);
    Estimate whole = Scatter.mean(differenceK, from, to);
    if (Double.isNaN(early) || Double.isNaN(late)) {
      return Optional.empty();
    }
    double trend = Math.abs(late - early);
    // A fall is no scatter: what both halves scatter is read beside the line through them, or heat
    // that still fades would excuse itself.
    double[] beside = besideLine(from, to, early, late);
    double scatter =
        Math.hypot(
            Scatter.mean(beside, 0, middle - from).standard(),
            Scatter.mean(beside, middle - from, to - from).standard());
    if (trend > Math.max(HALVES_TOLERANCE_K, TOLERANCE_IN_SCATTERS * scatter)) {
      return Optional.empty();
    }
    // What is left of a trend may be the end of the fading: half of it, rectangular.
    double fading = trend / 2 / Math.sqrt(3);
    return Optional.of(
        new Part(from, to, new Estimate(whole.value(), Math.hypot(whole.standard(), fading))));
  }

  /** What is left between two instants of the line through the means of both halves. */
  private double[] besideLine(int from, int to, double early, double late) {
    double[] beside = Arrays.copyOfRange(differenceK, from, to);
    double slope = (late - early) / (beside.length / 2.0);
    double middle = (beside.length - 1) / 2.0;
    for (int i = 0; i < beside.length; i++) {
      beside[i] -= (early + late) / 2 + slope * (i - middle);
    }
    return beside;
  }

  private double mean(int from, int to) {
    double sum = 0;
    int n = 0;
    for (int i = from; i < to; i++) {
      if (!Double.isNaN(differenceK[i])) {
        sum += differenceK[i];
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }
}
