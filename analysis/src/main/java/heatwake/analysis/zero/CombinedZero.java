package heatwake.analysis.zero;

import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;

/**
 * The zeros of several stretches as one. They are combined by their weights; where they differ by
 * more than their own uncertainties explain, the spread between them widens all (DerSimonian and
 * Laird, Controlled Clinical Trials 7:177-188, 1986, equations from memory).
 */
final class CombinedZero {
  private final List<Stretch> stretches;

  /** Variance from stretch to stretch beyond that of each. */
  private final double between;

  /** A span, and what the exchanger's own heat and pipes that still slide may add to it. */
  record Stretch(ProbeZero.Span span, double residueK) {
    private double scatterVariance() {
      double scatterK = Math.max(Zeroing.AT_REST_K, span.offsetK().standard());
      return scatterK * scatterK;
    }

    private double variance() {
      return scatterVariance() + residueK * residueK;
    }
  }

  /** Takes at least one stretch. */
  CombinedZero(List<Stretch> stretches) {
    this.stretches = stretches;
    this.between = betweenVariance(stretches);
  }

  /** Where the stretches lie, in order. */
  List<ProbeZero.Span> spans() {
    return stretches.stream().map(Stretch::span).toList();
  }

  /**
   * The zero, K.
   *
   * @param unseenK standard uncertainty that all stretches share
   */
  Estimate offsetK(double unseenK) {
    double weights = 0;
    double sum = 0;
    for (Stretch one : stretches) {
      double weight = 1 / (one.variance() + between);
      weights += weight;
      sum += weight * one.span().offsetK().value();
    }
    return new Estimate(sum / weights, Math.hypot(scatterK(), alikeK(unseenK)));
  }

  /** How far it moved from the first stretch to the last, K. */
  Estimate driftK(double unseenK) {
    if (stretches.size() == 1) {
      return Estimate.exact(0);
    }
    Estimate first = stretches.get(0).span().offsetK();
    Estimate last = stretches.get(stretches.size() - 1).span().offsetK();
    return new Estimate(
        last.value() - first.value(),
        Math.hypot(Math.hypot(first.standard(), last.standard()), alikeK(unseenK)));
  }

  /** The exchanger errs to one side in all of them, so a mean of many is no better in that. */
  private double alikeK(double unseenK) {
    double weights = 0;
    double residues = 0;
    for (Stretch one : stretches) {
      double weight = 1 / (one.variance() + between);
      weights += weight;
      residues += weight * one.residueK();
    }
    return Math.hypot(unseenK, residues / weights);
  }

  /** Standard uncertainty of the weighted mean by what differs from stretch to stretch. */
  private double scatterK() {
    double weights = 0;
    for (Stretch one : stretches) {
      weights += 1 / (one.scatterVariance() + between);
    }
    return Math.sqrt(1 / weights);
  }

  private static double betweenVariance(List<Stretch> stretches) {
    double weights = 0;
    double squaredWeights = 0;
    double sum = 0;
    for (Stretch one : stretches) {
      double weight = 1 / one.variance();
      weights += weight;
      squaredWeights += weight * weight;
      sum += weight * one.span().offsetK().value();
    }
    double mean = sum / weights;
    double spread = 0;
    for (Stretch one : stretches) {
      double off = one.span().offsetK().value() - mean;
      spread += off * off / one.variance();
    }
    int degrees = stretches.size() - 1;
    return degrees == 0
        ? 0
        : Math.max(0, (spread - degrees) / (weights - squaredWeights / weights));
  }
}
