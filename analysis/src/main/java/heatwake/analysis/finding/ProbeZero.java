package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.List;

/**
 * The zero of the temperature pair: water-out minus water-in found in place, while water circulates
 * and the compressor rests.
 *
 * @param offsetK the offset that was subtracted, with the uncertainty of the zero itself
 * @param pairK standard uncertainty of the difference that the two probes' stated uncertainties
 *     allow; an offset beyond twice this is more than the probes explain
 * @param driftK last span's offset minus the first's; zero with no uncertainty if there is one span
 * @param spans the stretches it was taken from, in order of time; never empty
 */
public record ProbeZero(Estimate offsetK, double pairK, Estimate driftK, List<Span> spans) {

  /**
   * One stretch.
   *
   * @param startMs first instant used, UTC milliseconds
   * @param endMs last instant used
   * @param offsetK mean difference over it
   */
  public record Span(long startMs, long endMs, Estimate offsetK) {}

  public ProbeZero {
    spans = List.copyOf(spans);
    if (spans.isEmpty()) {
      throw new IllegalArgumentException("a zero must come from at least one span");
    }
  }
}
