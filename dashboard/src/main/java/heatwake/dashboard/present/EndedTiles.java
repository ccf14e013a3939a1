package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** What came of a run that is over. */
public final class EndedTiles {
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");

  private EndedTiles() {}

  public static Tiles of(Findings findings, UnitChoice units) {
    List<Tile> tiles = new ArrayList<>();
    HeatFigures heat = findings.heat();
    Unit kWh = units.of(Quantity.ENERGY).unit();
    String part =
        KnownPart.isAll(heat.deliveredKnown())
            ? ""
            : ", " + KnownPart.percent(heat.deliveredKnown()) + " known";
    Telling telling = Telling.of(findings);
    addTelling(
        tiles,
        "Heat delivered",
        heat.deliveredJ(),
        one -> telling.heatOver(one, telling.ranMs()),
        kWh,
        part);
    addTelling(
        tiles,
        "COP of the run",
        heat.cop(),
        telling::cop,
        ONE,
        Disbelief.words(findings).map(words -> ", " + words).orElse(""));
    add(tiles, "Electric energy", heat.electricTotalJ(), kWh, "");
    longestSteady(findings)
        .ifPresent(
            span -> {
              Unit kelvin = units.of(Quantity.TEMPERATURE_DIFFERENCE).unit();
              Unit percent = units.of(Quantity.RATIO).unit();
              String of = ", steady";
              Unit kW = units.of(Quantity.POWER).unit();
              addTelling(tiles, "Heat", span.heatW(), telling::heat, kW, of);
              addTelling(tiles, "Of nameplate", span.ratio(), telling::ratio, percent, of);
              add(tiles, "Rise", span.riseK(), kelvin, of);
              add(tiles, "Heater flow", span.flowM3PerS(), units.of(Quantity.FLOW).unit(), of);
              add(tiles, "Through heater", span.heaterShare(), percent, of);
            });
    long starts = findings.cycles().stream().filter(one -> one.cycle().startSeen()).count();
    if (!findings.cycles().isEmpty()) {
      tiles.add(new Tile("Starts seen", Long.toString(starts), "", "", Tone.PLAIN));
    }
    Tile lead =
        new Tile(
            "Run over",
            Moment.duration(findings.endMs() - findings.startMs()),
            "",
            "recorded",
            Tone.PLAIN);
    return new Tiles(lead, Optional.empty(), tiles);
  }

  private static Optional<SteadySpan> longestSteady(Findings findings) {
    return findings.steady().stream()
        .max(Comparator.comparingLong(span -> span.endMs() - span.startMs()));
  }

  /** As {@link #add}, with a dash for what tells nothing. */
  private static void addTelling(
      List<Tile> tiles,
      String name,
      Optional<Estimate> estimate,
      Predicate<Estimate> tells,
      Unit unit,
      String remark) {
    estimate.ifPresent(
        one ->
            tiles.add(
                tells.test(one) ? Tile.of(name, one, unit, remark) : Tile.untold(name, unit)));
  }

  private static void add(
      List<Tile> tiles, String name, Optional<Estimate> estimate, Unit unit, String remark) {
    estimate.ifPresent(one -> tiles.add(Tile.of(name, one, unit, remark)));
  }
}
