package heatwake.analysis.compare;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What changed between two runs, brought to equal conditions by the nameplate.
 *
 * <p>Each run's steady heat and COP are divided by what the nameplate promises at that run's own
 * air and water; the quotient of the two ratios is the change. Where the runs' conditions are
 * alike, what the nameplate's points get wrong is the same in both and drops out; the further the
 * conditions lie apart, the more of it comes back, all of it from {@value #FAR_APART_K} K on (a
 * limit of ours).
 *
 * @param a steady running of the earlier run, by which is divided
 * @param b steady running of the later run
 */
record EqualConditions(RunLevel a, RunLevel b) {
  /** From this difference of air and water together, the nameplate's whole uncertainty counts. */
  static final double FAR_APART_K = 15;

  /**
   * Runs whose air and water together differ by no more than this are compared without a nameplate;
   * ours: heat changes by about 2 % per kelvin of air (common practice).
   */
  static final double ALIKE_K = 2;

  /** Heat of B over heat of A by the nameplate; empty where one's ratio to it is not known. */
  Optional<Estimate> heat() {
    return change(a.measuredRatio(), b.measuredRatio(), b.heatRatio());
  }

  /** COP of B over COP of A by the nameplate; empty where one's ratio to it is not known. */
  Optional<Estimate> cop() {
    return change(a.measuredCopRatio(), b.measuredCopRatio(), b.copRatio());
  }

  /** Whether the conditions are so alike that no nameplate is needed. */
  boolean areAlike() {
    return apartK() <= ALIKE_K;
  }

  /** Heat of B over heat of A as they are. */
  Optional<Estimate> plainHeat() {
    return quotient(b.heatW(), a.heatW());
  }

  /** COP of B over COP of A as they are. */
  Optional<Estimate> plainCop() {
    return quotient(b.cop(), a.cop());
  }

  private Optional<Estimate> change(
      Optional<Estimate> measuredA, Optional<Estimate> measuredB, Optional<Estimate> wholeB) {
    return quotient(measuredB, measuredA)
        .map(
            one -> {
              double whole = wholeB.map(EqualConditions::relative).orElse(0.0);
              double measured = measuredB.map(EqualConditions::relative).orElse(0.0);
              double nameplate = Math.sqrt(Math.max(0, whole * whole - measured * measured));
              // An unknown distance counts as a great one.
              double share = Double.isNaN(apartK()) ? 1 : Math.min(1, apartK() / FAR_APART_K);
              return new Estimate(
                  one.value(),
                  Math.hypot(one.standard(), Math.abs(one.value()) * nameplate * share));
            });
  }

  private static double relative(Estimate estimate) {
    return estimate.value() == 0 ? 0 : estimate.standard() / Math.abs(estimate.value());
  }

  private static Optional<Estimate> quotient(Optional<Estimate> value, Optional<Estimate> divisor) {
    return value.flatMap(one -> divisor.filter(two -> two.value() != 0).map(one::dividedBy));
  }

  /** Distance of air and water together, K; NaN where one is not known. */
  private double apartK() {
    return apart(a.airK(), b.airK()) + apart(a.waterInK(), b.waterInK());
  }

  private static double apart(OptionalDouble one, OptionalDouble other) {
    return one.isPresent() && other.isPresent()
        ? Math.abs(one.getAsDouble() - other.getAsDouble())
        : Double.NaN;
  }
}
