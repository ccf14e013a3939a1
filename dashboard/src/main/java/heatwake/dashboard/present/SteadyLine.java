package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import java.util.List;

/** A steady span in one line: {@code 4 May 20:35 to 22:48, 15.3 ± 0.7 kW, COP 5.6 ± 0.3}. */
public final class SteadyLine {
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");

  private SteadyLine() {}

  /** Some spans of a run, a line each. */
  public static List<String> of(
      List<SteadySpan> spans, Findings findings, UnitChoice units, Moment moment) {
    Telling telling = Telling.of(findings);
    return spans.stream().map(span -> of(span, telling, findings, units, moment)).toList();
  }

  private static String of(
      SteadySpan span, Telling telling, Findings findings, UnitChoice units, Moment moment) {
    StringBuilder line = new StringBuilder(moment.span(span.startMs(), span.endMs()));
    span.heatW()
        .ifPresent(
            heat ->
                line.append(", ")
                    .append(
                        telling.heat(heat)
                            ? units.of(Quantity.POWER).text(heat)
                            : "heat " + Telling.WORDS));
    span.cop()
        .filter(telling::cop)
        .ifPresent(
            cop ->
                line.append(", COP ")
                    .append(Figure.of(cop, ONE))
                    .append(Disbelief.words(findings).map(words -> " (" + words + ")").orElse("")));
    span.ratio()
        .filter(telling::ratio)
        .ifPresent(
            ratio -> line.append(", ").append(Figure.of(ratio, ONE)).append(" of nameplate"));
    return line.toString();
  }
}
