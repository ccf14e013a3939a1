package heatwake.analysis.compare;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What a run's steady running comes to: means over its steady spans, weighted by their length.
 *
 * <p>The uncertainty of a mean is the greatest of its spans': within a run the spans share their
 * probes, and what probes get wrong does not average out.
 *
 * @param heatW heat given to the water
 * @param cop heat over power
 * @param heatRatio heat over what the nameplate promises at the conditions of each span
 * @param copRatio COP over what the nameplate promises
 * @param measuredRatio as {@code heatRatio}, with the uncertainty of the measurement alone
 * @param measuredCopRatio as {@code copRatio}, with the uncertainty of the measurement alone
 * @param airK entering air
 * @param waterInK entering water
 */
record RunLevel(
    Optional<Estimate> heatW,
    Optional<Estimate> cop,
    Optional<Estimate> heatRatio,
    Optional<Estimate> copRatio,
    Optional<Estimate> measuredRatio,
    Optional<Estimate> measuredCopRatio,
    OptionalDouble airK,
    OptionalDouble waterInK) {

  static RunLevel of(Findings findings) {
    List<SteadySpan> spans = findings.steady();
    return new RunLevel(
        mean(spans, SteadySpan::heatW),
        mean(spans, SteadySpan::cop),
        mean(spans, SteadySpan::ratio),
        mean(spans, span -> over(span.cop(), expectedCop(span))),
        mean(spans, span -> over(span.heatW(), span.expectedHeatW().map(RunLevel::taken))),
        mean(spans, span -> over(span.cop(), expectedCop(span).map(RunLevel::taken))),
        meanOf(spans, SteadySpan::airK),
        meanOf(spans, SteadySpan::waterInK));
  }

  private static Optional<Estimate> expectedCop(SteadySpan span) {
    return over(span.expectedHeatW(), span.expectedPowerW());
  }

  private static Optional<Estimate> over(Optional<Estimate> value, Optional<Estimate> divisor) {
    return value.flatMap(one -> divisor.map(one::dividedBy));
  }

  /** The value without its uncertainty: what two runs of one nameplate have in common. */
  private static Estimate taken(Estimate estimate) {
    return Estimate.exact(estimate.value());
  }

  private static Optional<Estimate> mean(
      List<SteadySpan> spans, Function<SteadySpan, Optional<Estimate>> figure) {
    double weighted = 0;
    double lengths = 0;
    double worst = 0;
    for (SteadySpan span : spans) {
      Optional<Estimate> one = figure.apply(span);
      if (one.isPresent()) {
        double length = span.endMs() - span.startMs();
        weighted += length * one.get().value();
        lengths += length;
        worst = Math.max(worst, one.get().standard());
      }
    }
    return lengths > 0 ? Optional.of(new Estimate(weighted / lengths, worst)) : Optional.empty();
  }

  private static OptionalDouble meanOf(
      List<SteadySpan> spans, Function<SteadySpan, OptionalDouble> figure) {
    return mean(
            spans,
            span -> {
              OptionalDouble one = figure.apply(span);
              return one.isPresent()
                  ? Optional.of(Estimate.exact(one.getAsDouble()))
                  : Optional.empty();
            })
        .map(one -> OptionalDouble.of(one.value()))
        .orElse(OptionalDouble.empty());
  }
}
