package heatwake.dashboard.present;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which figures tell a person anything. One that may be nothing as well as half of what is ordinary
 * for this heater, or less than nothing, does not: it is shown as {@value #WORDS}, not as numbers.
 * One that is known to be near nothing does: a heater that gives none.
 */
final class Telling {
  /** For beside a figure's name. */
  static final String WORDS = "too uncertain to tell";

  /** Share of the ordinary that the expanded uncertainty may reach; ours. */
  private static final double MOST_SHARE = 0.5;

  /** COP of a pool heater in mild air; common practice. */
  private static final double ORDINARY_COP = 4;

  /** The nameplate's heat, W; NaN where nothing tells it. */
  private final double heatW;

  private final long ranMs;

  private Telling(double heatW, long ranMs) {
    this.heatW = heatW;
    this.ranMs = ranMs;
  }

  /**
   * By the nameplate's heat in this run or, without one, by what the electric energy lets expect.
   */
  static Telling of(Findings findings) {
    long ranMs =
        findings.cycles().stream()
            .mapToLong(one -> one.cycle().stopMs().orElse(findings.endMs()) - one.cycle().startMs())
            .sum();
    double heatW =
        Stream.concat(
                findings.steady().stream().map(SteadySpan::expectedHeatW),
                findings.bypass().map(BypassFigures::expectedHeatW).stream())
            .flatMap(Optional::stream)
            .mapToDouble(Estimate::value)
            .max()
            .orElseGet(() -> byElectricity(findings, ranMs));
    return new Telling(heatW, ranMs);
  }

  private static double byElectricity(Findings findings, long ranMs) {
    return ranMs > 0
        ? findings
            .heat()
            .electricTotalJ()
            .map(energy -> ORDINARY_COP * energy.value() / (ranMs / 1e3))
            .orElse(Double.NaN)
        : Double.NaN;
  }

  /** How long the compressor ran in all. */
  long ranMs() {
    return ranMs;
  }

  /** Whether heat given to the water, or lost by the pool, tells anything; W. */
  boolean heat(Estimate figure) {
    return tells(figure, heatW);
  }

  /** The same of heat over a time; J. */
  boolean heatOver(Estimate figure, long lengthMs) {
    return tells(figure, heatW * lengthMs / 1e3);
  }

  boolean cop(Estimate figure) {
    return tells(figure, ORDINARY_COP);
  }

  /** Whether a heat or COP over that of the nameplate tells anything. */
  boolean ratio(Estimate figure) {
    return tells(figure, 1);
  }

  private static boolean tells(Estimate figure, double ordinary) {
    boolean mayBeNothing = Math.abs(figure.value()) <= figure.expanded();
    boolean wide =
        Double.isNaN(ordinary) ? figure.value() < 0 : figure.expanded() > MOST_SHARE * ordinary;
    return !(mayBeNothing && wide);
  }
}
