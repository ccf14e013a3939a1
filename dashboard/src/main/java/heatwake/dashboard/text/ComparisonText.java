package heatwake.dashboard.text;

import heatwake.analysis.compare.Comparison;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.present.Disbelief;
import heatwake.dashboard.present.Figure;
import heatwake.dashboard.present.UnitChoice;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Writes a comparison of two runs for a person at a terminal. */
public final class ComparisonText {
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");
  private static final Unit PERCENT = Unit.of(Quantity.RATIO, "%");
  private static final int NAME_WIDTH = 36;

  private final Comparison comparison;
  private final UnitChoice units;

  /** Takes what the comparison came to. */
  public ComparisonText(Comparison comparison, UnitChoice units) {
    this.comparison = comparison;
    this.units = units;
  }

  /** Writes everything, and flushes. */
  public void writeTo(PrintWriter out) {
    Layout layout = new Layout(out);
    layout.line(
        "Run "
            + comparison.runB()
            + " against run "
            + comparison.runA()
            + ", on equal conditions: "
            + comparison.outcome().words());
    layout.line("± holds in about 95 of 100 cases (expanded uncertainty, k = 2)");
    layout.blank();
    change(layout, "Heat", comparison.heatChange(), comparison.heatDoubts());
    change(layout, "COP", comparison.copChange(), comparison.copDoubts());
    ratio(layout, comparison.runA(), comparison.heatRatioA());
    ratio(layout, comparison.runB(), comparison.heatRatioB());
    conditions(layout, comparison.runA(), comparison.airA(), comparison.waterA());
    conditions(layout, comparison.runB(), comparison.airB(), comparison.waterB());
    // The doubts of the heat are among those of the COP.
    List<String> remarks =
        Stream.concat(comparison.copDoubts().stream(), comparison.missing().stream())
            .map(units::sentence)
            .toList();
    boolean anyFigure =
        comparison.heatChange().isPresent()
            || comparison.copChange().isPresent()
            || comparison.heatRatioA().isPresent()
            || comparison.heatRatioB().isPresent()
            || comparison.airA().isPresent()
            || comparison.airB().isPresent();
    if (!remarks.isEmpty()) {
      if (anyFigure) {
        layout.blank();
      }
      remarks.forEach(text -> layout.paragraph("- ", text));
    }
    out.flush();
  }

  private static void change(
      Layout layout, String name, Optional<Estimate> change, List<String> doubts) {
    change.ifPresent(
        one ->
            layout.columns(
                NAME_WIDTH,
                name + " of the later run",
                Figure.of(one, PERCENT),
                doubts.isEmpty() ? "of the earlier run's" : Disbelief.WORDS));
  }

  private static void ratio(Layout layout, long run, Optional<Estimate> ratio) {
    ratio.ifPresent(
        one ->
            layout.columns(
                NAME_WIDTH, "Heat over nameplate heat, run " + run, Figure.of(one, ONE), ""));
  }

  private void conditions(Layout layout, long run, OptionalDouble air, OptionalDouble water) {
    if (air.isPresent() && water.isPresent()) {
      layout.columns(
          NAME_WIDTH,
          "Air and water in, run " + run,
          units.of(Quantity.TEMPERATURE).text(air.getAsDouble())
              + ", "
              + units.of(Quantity.TEMPERATURE).text(water.getAsDouble()),
          "");
    }
  }
}
