package heatwake.dashboard.present;

import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A compressor cycle as a person reads it. Figures are without their unit, which {@link
 * #energyUnit} gives; a figure that is not known, or too uncertain to tell anything, is a dash.
 *
 * @param number its place in the run, from 1
 * @param when from start to stop
 * @param ran how long the compressor ran
 * @param heat heat given to the water, with the share of the time in which it is known if not all
 * @param electric electric energy taken
 * @param cop heat over electric energy
 * @param startMs start, UTC milliseconds
 * @param endMs stop, or the end of the run for a compressor that still ran
 */
public record CycleRow(
    int number,
    String when,
    String ran,
    String heat,
    String electric,
    String cop,
    long startMs,
    long endMs) {

  private static final String IN_PART = " in ";
  private static final String DOUBTED = " ?";
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");

  /** The cycles of a run, in order of time. */
  public static List<CycleRow> of(Findings findings, UnitChoice units, Moment moment) {
    List<CycleRow> rows = new ArrayList<>();
    Telling telling = Telling.of(findings);
    for (CycleFigures one : findings.cycles()) {
      Cycle cycle = one.cycle();
      long endMs = cycle.stopMs().orElse(findings.endMs());
      rows.add(
          new CycleRow(
              rows.size() + 1,
              when(cycle, moment),
              Moment.duration(endMs - cycle.startMs()),
              delivered(one, endMs - cycle.startMs(), telling, units.of(Quantity.ENERGY).unit()),
              number(one.electricJ(), units.of(Quantity.ENERGY).unit()),
              cop(one, telling, findings),
              cycle.startMs(),
              endMs));
    }
    return rows;
  }

  /** The unit of heat and electric energy: {@code kWh}. */
  public static String energyUnit(UnitChoice units) {
    return units.of(Quantity.ENERGY).symbol();
  }

  /** {@code "6 cycles; the compressor ran 9 h 40 min, 12 min to 3 h 5 min at a time"}. */
  public static String summary(List<CycleRow> rows) {
    long sum = rows.stream().mapToLong(CycleRow::lengthMs).sum();
    String all =
        rows.size()
            + (rows.size() == 1 ? " cycle" : " cycles")
            + "; the compressor ran "
            + Moment.duration(sum);
    if (rows.size() < 2) {
      return all;
    }
    String least = Moment.duration(rows.stream().mapToLong(CycleRow::lengthMs).min().orElseThrow());
    String most = Moment.duration(rows.stream().mapToLong(CycleRow::lengthMs).max().orElseThrow());
    return all + ", " + (least.equals(most) ? least : least + " to " + most) + " at a time";
  }

  /** What the figures of these cycles cover. */
  public static String coverage(List<CycleRow> rows) {
    String all = "Heat and electric energy count from the start until 3 min after the stop";
    String part =
        rows.stream()
            .map(CycleRow::heat)
            .filter(heat -> heat.contains(IN_PART))
            .findFirst()
            .map(heat -> heat.substring(heat.indexOf(IN_PART)).trim())
            .map(known -> "; \"" + known + "\": the heat is known in that part of the time")
            .orElse("");
    String doubt =
        rows.stream().anyMatch(row -> row.cop().endsWith(DOUBTED))
            ? "; \"?\": the COP of the run is not to be believed"
            : "";
    return all + part + doubt + ".";
  }

  private long lengthMs() {
    return endMs - startMs;
  }

  private static String when(Cycle cycle, Moment moment) {
    String before = cycle.startSeen() ? "" : "before ";
    return cycle.stopMs().isPresent()
        ? before + moment.span(cycle.startMs(), cycle.stopMs().getAsLong())
        : "since " + before + moment.shortDayAndTime(cycle.startMs());
  }

  private static String delivered(CycleFigures one, long ranMs, Telling telling, Unit unit) {
    Optional<Estimate> told = one.deliveredJ().filter(heat -> telling.heatOver(heat, ranMs));
    String heat = number(told, unit);
    return told.isEmpty() || KnownPart.isAll(one.deliveredKnown())
        ? heat
        : heat + IN_PART + KnownPart.percent(one.deliveredKnown());
  }

  private static String cop(CycleFigures one, Telling telling, Findings findings) {
    Optional<Estimate> told = one.cop().filter(telling::cop);
    boolean doubted = told.isPresent() && findings.heatDoubt().isPresent();
    return number(told, ONE) + (doubted ? DOUBTED : "");
  }

  private static String number(Optional<Estimate> estimate, Unit unit) {
    return estimate.map(one -> Figure.numbers(one, unit)).orElse(Tile.NONE);
  }
}
