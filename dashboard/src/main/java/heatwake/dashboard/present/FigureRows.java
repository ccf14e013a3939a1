package heatwake.dashboard.present;

import heatwake.analysis.finding.CostFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The figures of a run as tables. What could not be computed is left out; the findings say why
 * under what is missing.
 */
public final class FigureRows {
  /** What was seen so shortly before the end stands for it; ours. */
  private static final long LATE_MS = 600_000;

  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");

  private final Findings findings;
  private final UnitChoice units;
  private final Moment moment;
  private final Telling telling;

  private FigureRows(Findings findings, UnitChoice units, Moment moment) {
    this.findings = findings;
    this.units = units;
    this.moment = moment;
    this.telling = Telling.of(findings);
  }

  /** Figures of the whole run. */
  public static List<FigureRow> ofRun(Findings findings, UnitChoice units, Moment moment) {
    return new FigureRows(findings, units, moment).run();
  }

  /** Figures of one steady span. */
  public static List<FigureRow> ofSteady(SteadySpan span, Findings findings, UnitChoice units) {
    return new Table(units, Telling.of(findings)).steady(span, findings);
  }

  private List<FigureRow> run() {
    Table table = new Table(units, telling);
    HeatFigures heat = findings.heat();
    table.addHeat("Heat delivered", heat.deliveredJ(), telling.ranMs(), delivered(heat));
    boolean electricIsAll = KnownPart.isAll(heat.electricKnown());
    boolean isAll = electricIsAll && KnownPart.isAll(heat.deliveredKnown());
    // Parts of different times are no quotient.
    table.add(
        isAll ? "Electric energy for it" : "Electric energy, heater on",
        heat.electricJ(),
        Quantity.ENERGY,
        electric(heat));
    table.addCop(
        "COP",
        heat.cop(),
        Disbelief.withReason(findings)
            .orElse(
                isAll
                    ? "heat delivered over electric energy"
                    : "heat over electric energy while both are known"));
    table.add(
        "Electric energy, whole run",
        heat.electricTotalJ(),
        Quantity.ENERGY,
        electricIsAll ? "" : "as far as known");
    table.add(
        "Zero of the probe pair",
        heat.zeroOffsetK(),
        Quantity.TEMPERATURE_DIFFERENCE,
        "found at rest and subtracted");
    pool(table, findings.pool());
    findings.cost().ifPresent(cost -> cost(table, cost));
    return table.rows;
  }

  private static String delivered(HeatFigures heat) {
    String way = heat.flowWay().orElse("");
    return KnownPart.isAll(heat.deliveredKnown())
        ? way
        : way + "; in the " + KnownPart.percent(heat.deliveredKnown()) + " of the time known";
  }

  private static String electric(HeatFigures heat) {
    return KnownPart.isAll(heat.electricKnown())
        ? ""
        : "in the " + KnownPart.percent(heat.electricKnown()) + " of the time known";
  }

  private void pool(Table table, PoolFigures pool) {
    boolean isLate = pool.poolMs().orElse(findings.endMs()) >= findings.endMs() - LATE_MS;
    String when = isLate ? "" : "at " + moment.shortDayAndTime(pool.poolMs().getAsLong());
    table.add(
        isLate ? "Pool at the end" : "Pool when last seen",
        pool.poolK(),
        Quantity.TEMPERATURE,
        when);
    table.addHeat(
        "Heat stored in the pool",
        pool.storedJ(),
        findings.endMs() - findings.startMs(),
        "from its own warming" + (isLate ? "" : ", until then"));
    addAtRest(table, pool.lossAtRestW());
    table.add("Pool loss, computed", pool.lossModelW(), Quantity.POWER, "from air, wind, humidity");
    if (pool.setpointMs().isPresent() && pool.setpointMs().getAsLong() <= findings.endMs()) {
      table.rows.add(new FigureRow("Set temperature", "reached", ""));
    } else if (pool.setpointMs().isPresent()) {
      table.rows.add(
          new FigureRow(
              "Set temperature reached",
              moment.shortDayAndTime(pool.setpointMs().getAsLong()),
              "at the pace seen, heater on"));
    } else if (pool.setpointUnreachable()) {
      table.rows.add(new FigureRow("Set temperature", "not reached", "at the pace seen"));
    }
  }

  /** A loss beyond doubt below nothing is a gain, as from sun or run-on heat. */
  private static void addAtRest(Table table, Optional<Estimate> lossW) {
    if (lossW.filter(loss -> loss.value() + 2 * loss.standard() < 0).isPresent()) {
      table.addHeat(
          "Pool gain, heater off",
          lossW.map(loss -> new Estimate(-loss.value(), loss.standard())),
          "from its warming");
    } else {
      table.addHeat("Pool loss, heater off", lossW, "from its cooling");
    }
  }

  private void cost(Table table, CostFigures cost) {
    cost.total()
        .ifPresent(
            total ->
                table.rows.add(
                    new FigureRow(
                        "Cost of the run",
                        Figure.numbers(total, ONE) + " " + cost.currency(),
                        "")));
    cost.perKWhHeat()
        .ifPresent(
            price ->
                table.rows.add(
                    new FigureRow(
                        "Cost of one kWh of heat",
                        heatTells()
                            ? Figure.numbers(price, ONE) + " " + cost.currency()
                            : Telling.WORDS,
                        Disbelief.words(findings).orElse(""))));
  }

  private boolean heatTells() {
    return findings
        .heat()
        .deliveredJ()
        .filter(heat -> !telling.heatOver(heat, telling.ranMs()))
        .isEmpty();
  }

  private static final class Table {
    private final UnitChoice units;
    private final Telling telling;
    private final List<FigureRow> rows = new ArrayList<>();

    Table(UnitChoice units, Telling telling) {
      this.units = units;
      this.telling = telling;
    }

    void addHeat(String name, Optional<Estimate> heatW, String remark) {
      heatW.ifPresent(
          one -> add(name, units.of(Quantity.POWER).text(one), telling.heat(one), remark));
    }

    void addHeat(String name, Optional<Estimate> heatJ, long overMs, String remark) {
      heatJ.ifPresent(
          one ->
              add(
                  name,
                  units.of(Quantity.ENERGY).text(one),
                  telling.heatOver(one, overMs),
                  remark));
    }

    void addCop(String name, Optional<Estimate> cop, String remark) {
      cop.ifPresent(one -> add(name, Figure.numbers(one, ONE), telling.cop(one), remark));
    }

    private void add(String name, String value, boolean tells, String remark) {
      rows.add(new FigureRow(name, tells ? value : Telling.WORDS, remark));
    }

    void add(String name, Optional<Estimate> estimate, Quantity quantity, String remark) {
      estimate.ifPresent(
          one -> rows.add(new FigureRow(name, units.of(quantity).text(one), remark)));
    }

    void addRatio(String name, Optional<Estimate> ratio) {
      ratio.ifPresent(one -> add(name, Figure.numbers(one, ONE), telling.ratio(one), ""));
    }

    void add(String name, OptionalDouble si, Quantity quantity) {
      si.ifPresent(one -> rows.add(new FigureRow(name, units.of(quantity).text(one), "")));
    }

    /** A difference between a pipe and a saturation temperature: good to a tenth at most. */
    void addDifference(String name, OptionalDouble kelvin) {
      Unit unit = units.of(Quantity.TEMPERATURE_DIFFERENCE).unit();
      kelvin.ifPresent(one -> rows.add(new FigureRow(name, Figure.of(one, unit, 1), "")));
    }

    List<FigureRow> steady(SteadySpan span, Findings run) {
      addHeat("Heat", span.heatW(), "");
      add("Nameplate heat at these conditions", span.expectedHeatW(), Quantity.POWER, "");
      addRatio("Heat over nameplate heat", span.ratio());
      add("Power", span.powerW(), Quantity.POWER, "");
      addCop(Disbelief.words(run).map(words -> "COP, " + words).orElse("COP"), span.cop(), "");
      add("Rise", span.riseK(), Quantity.TEMPERATURE_DIFFERENCE, "");
      add("Flow through the heater", span.flowM3PerS(), Quantity.FLOW, "");
      add("Share through the heater", span.heaterShare(), Quantity.RATIO, "");
      add("Water in", span.waterInK(), Quantity.TEMPERATURE);
      add("Air", span.airK(), Quantity.TEMPERATURE);
      add("Condensing", span.condensingK(), Quantity.TEMPERATURE);
      add("Evaporating", span.evaporatingK(), Quantity.TEMPERATURE);
      addDifference("Superheat", span.superheatK());
      addDifference("Subcooling", span.subcoolingK());
      addDifference("Condenser approach", span.condenserApproachK());
      addDifference("Evaporator approach", span.evaporatorApproachK());
      span.condensateKgPerS()
          .ifPresent(rate -> rows.add(new FigureRow("Condensate", units.condensate(rate), "")));
      return rows;
    }
  }
}
