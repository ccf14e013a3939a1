package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What is happening now, in a run that is being recorded. */
public final class LiveTiles {
  /** A derived figure is the mean over this time: over a rise of 2 K one reading says little. */
  private static final long MEAN_MS = 60_000;

  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");

  private static final List<Channel> READINGS =
      List.of(
          Channel.WATER_IN,
          Channel.WATER_OUT,
          Channel.POWER,
          Channel.PRESSURE_DISCHARGE,
          Channel.PRESSURE_SUCTION,
          Channel.AIR_IN,
          Channel.AIR_AMBIENT,
          Channel.WATER_POOL,
          Channel.CURRENT,
          Channel.VOLTAGE,
          Channel.FLOW_TOTAL,
          Channel.PRESSURE_FILTER);

  private LiveTiles() {}

  /**
   * The state of a run so far.
   *
   * @param nowMs the present moment on the clock of the readings
   */
  public static Tiles of(Recording recording, Findings findings, long nowMs, UnitChoice units) {
    return new Reader(recording, findings, nowMs, units).read();
  }

  private record Reader(Recording recording, Findings findings, long nowMs, UnitChoice units) {
    Tiles read() {
      List<Tile> figures = new ArrayList<>();
      Telling telling = Telling.of(findings);
      heat(telling).ifPresent(figures::add);
      cop(telling).ifPresent(figures::add);
      steadyOrTrace("Rise", SteadySpan::riseK, Trace.Kind.RISE).ifPresent(figures::add);
      flow().ifPresent(figures::add);
      traced("Through heater", Trace.Kind.HEATER_SHARE, BypassAdvice.SHARE_MEAN_MS, "bypass")
          .ifPresent(figures::add);
      for (Channel channel : READINGS) {
        recording.of(channel).map(this::reading).ifPresent(figures::add);
      }
      return new Tiles(lead(), Optional.of(phaseNow()), figures);
    }

    private Phase phaseNow() {
      List<PhaseSpan> phases = findings.phases();
      return phases.isEmpty() ? Phase.UNKNOWN : phases.get(phases.size() - 1).phase();
    }

    private Tile lead() {
      List<PhaseSpan> phases = findings.phases();
      String since =
          phases.isEmpty()
              ? ""
              : "for "
                  + Moment.duration(Math.max(0, nowMs - phases.get(phases.size() - 1).startMs()));
      return new Tile("Heater now", Names.of(phaseNow()), "", since, Tone.PLAIN);
    }

    /** The steady span that is still going on, if the heater runs steadily. */
    private Optional<SteadySpan> steadyNow() {
      List<SteadySpan> steady = findings.steady();
      if (steady.isEmpty()) {
        return Optional.empty();
      }
      SteadySpan last = steady.get(steady.size() - 1);
      return nowMs - last.endMs() <= MEAN_MS ? Optional.of(last) : Optional.empty();
    }

    private Optional<Tile> steadyOrTrace(
        String name, Function<SteadySpan, Optional<Estimate>> of, Trace.Kind kind) {
      DisplayUnit unit = units.of(kind);
      Optional<Estimate> steady = steadyNow().flatMap(of);
      if (steady.isPresent()) {
        return Optional.of(Tile.of(name, steady.get(), unit.unit(), ", steady"));
      }
      return traced(name, kind, MEAN_MS, "last minute");
    }

    private Optional<Tile> traced(String name, Trace.Kind kind, long overMs, String over) {
      if (findings.traces().stream().noneMatch(trace -> trace.kind() == kind)) {
        return Optional.empty();
      }
      DisplayUnit unit = units.of(kind);
      OptionalDouble mean = RecentMean.of(findings, kind, nowMs, overMs);
      return Optional.of(
          mean.isPresent()
              ? new Tile(name, unit.number(mean.getAsDouble()), unit.symbol(), over, Tone.PLAIN)
              : new Tile(name, Tile.NONE, unit.symbol(), "", Tone.STALE));
    }

    private String remark() {
      return ", " + Disbelief.words(findings).orElse("steady");
    }

    private Optional<Tile> heat(Telling telling) {
      boolean told =
          steadyNow().flatMap(SteadySpan::heatW).filter(one -> !telling.heat(one)).isEmpty();
      return told
          ? steadyOrTrace("Heat", SteadySpan::heatW, Trace.Kind.HEAT)
          : Optional.of(Tile.untold("Heat", units.of(Trace.Kind.HEAT).unit()));
    }

    private Optional<Tile> cop(Telling telling) {
      return steadyNow()
          .flatMap(SteadySpan::cop)
          .map(
              cop ->
                  telling.cop(cop) ? Tile.of("COP", cop, ONE, remark()) : Tile.untold("COP", ONE))
          .or(
              () ->
                  findings.heat().cop().isEmpty() && findings.steady().isEmpty()
                      ? Optional.empty()
                      : Optional.of(new Tile("COP", Tile.NONE, "", "when steady", Tone.STALE)));
    }

    private Optional<Tile> flow() {
      Optional<Series> measured = recording.of(Channel.FLOW_HEATER);
      if (measured.isPresent()) {
        return measured.map(this::reading).map(tile -> limitedFlow(tile, measured.get()));
      }
      return steadyOrTrace("Heater flow", SteadySpan::flowM3PerS, Trace.Kind.HEATER_FLOW);
    }

    /** Water that moves, but less than the nameplate asks for, is the commonest fault of all. */
    private Tile limitedFlow(Tile tile, Series flow) {
      OptionalDouble least = recording.rig().heater().flowMinM3PerS();
      double last = flow.value(flow.size() - 1);
      boolean moving = least.isPresent() && last > 0.1 * least.getAsDouble();
      if (tile.tone() != Tone.STALE && moving && last < least.getAsDouble()) {
        String limit = "nameplate least " + units.of(Quantity.FLOW).number(least.getAsDouble());
        return new Tile(tile.name(), tile.value(), tile.unit(), limit, Tone.WARNING);
      }
      return tile;
    }

    private Tile reading(Series series) {
      ReadingRow row = ReadingRow.of(series, nowMs, units);
      return new Tile(
          row.title(), row.value(), row.unit(), row.stale() ? row.age() : "", row.tone());
    }
  }
}
