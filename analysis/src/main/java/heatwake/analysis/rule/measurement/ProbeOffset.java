package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Inlet and outlet differ by more than their uncertainty with the compressor at rest. */
public final class ProbeOffset implements Rule {
  /**
   * Standard uncertainties of the pair: honest probes pass this once in two thousand pairs (normal
   * distribution); ours.
   */
  private static final double FACTOR = 3.5;

  /** A smaller offset is not worth a word: it is zeroed anyway, K; ours. */
  private static final double LEAST_K = 0.3;

  @Override
  public String id() {
    return "probe-offset";
  }

  @Override
  public String summary() {
    return "Inlet and outlet probe differ by more than their uncertainty with the compressor at"
        + " rest.";
  }

  @Override
  public String needs() {
    return "water-in and water-out while water moves and the compressor rests";
  }

  @Override
  public String limits() {
    return "The zero found in place exceeds 3.5 standard uncertainties of the pair (honest probes do"
        + " once in two thousand pairs) and 0.3 K (ours). It is subtracted all the same.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<ProbeZero> zero = evidence.zero();
    if (zero.isEmpty()) {
      return Outcome.notEnoughData(
          "water-in and water-out were not seen with water moving and the compressor at rest");
    }
    return Math.abs(zero.get().offsetK().value()) <= allowedK(zero.get())
        ? Outcome.clear()
        : Outcome.flagged(flag(zero.get()));
  }

  /** The greatest offset that honest probes show, K. */
  public static double allowedK(ProbeZero zero) {
    return Math.max(LEAST_K, FACTOR * Math.hypot(zero.pairK(), zero.offsetK().standard()));
  }

  /**
   * Whether an offset is known better than honest probes may be apart, so that it tells anything.
   */
  public static boolean tells(ProbeZero zero) {
    return zero.offsetK().expanded() <= Math.max(LEAST_K, FACTOR * zero.pairK());
  }

  private Flag flag(ProbeZero zero) {
    double offsetK = zero.offsetK().value();
    List<ProbeZero.Span> spans = zero.spans();
    return new Flag(
        id(),
        Side.MEASUREMENT,
        Severity.INFO,
        spans.get(0).startMs(),
        spans.get(spans.size() - 1).endMs(),
        String.format(
            Locale.ROOT,
            "water-out reads %.2f K %s water-in with the compressor at rest; the two probes explain"
                + " %.2f K. Subtracted from every rise",
            Math.abs(offsetK),
            offsetK > 0 ? "above" : "below",
            2 * zero.pairK()),
        List.of(
            "a probe with poor contact to the pipe or without insulation",
            "probes not made as a pair",
            "another heat source or sun on one of the pipes"),
        "Press, insulate and shade both probes alike; put both into one cup of water and compare.",
        Set.of(Channel.WATER_IN, Channel.WATER_OUT));
  }
}
