package heatwake.dashboard.chart;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.present.DisplayUnit;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The charts of one run. Immutable, so that one thread may paint while another makes the charts of
 * the run a few seconds later.
 */
public final class RunCharts {
  /** Height of a strip with its heading, below which its curves are hard to follow; ours. */
  private static final int LEGIBLE_HEIGHT = 96;

  private static final List<Strip> MATTER_MOST =
      List.of(
          Strip.HEAT,
          Strip.WATER,
          Strip.FLOW,
          Strip.REFRIGERANT_PRESSURE,
          Strip.RISE,
          Strip.AIR,
          Strip.REFRIGERANT_TEMPERATURE,
          Strip.SHARE,
          Strip.CURRENT,
          Strip.STATES,
          Strip.FILTER,
          Strip.VOLTAGE,
          Strip.HUMIDITY,
          Strip.ENERGY,
          Strip.WIND);

  private final Recording recording;
  private final Findings findings;
  private final UnitChoice units;
  private final Moment times;
  private final Map<Strip, Map<Line, Samples>> lines = new EnumMap<>(Strip.class);

  private RunCharts(Recording recording, Findings findings, UnitChoice units, Moment times) {
    this.recording = recording;
    this.findings = findings;
    this.units = units;
    this.times = times;
    for (Strip strip : Strip.values()) {
      Map<Line, Samples> found = new LinkedHashMap<>();
      for (Line line : strip.lines()) {
        Samples samples = samplesOf(line, strip.unit(units));
        if (samples != null) {
          found.put(line, samples);
        }
      }
      if (!found.isEmpty() && !onlyExpected(found)) {
        lines.put(strip, found);
      }
    }
  }

  /** Charts of a run and what was found in it, with clock times of one zone. */
  public static RunCharts of(
      Recording recording, Findings findings, UnitChoice units, Moment times) {
    return new RunCharts(recording, findings, units, times);
  }

  /** The strips that have something to show, in their usual order. */
  public List<Strip> strips() {
    return List.copyOf(lines.keySet());
  }

  /**
   * As many strips as stand legibly one below the other in a height, the ones that decide most
   * kept.
   */
  public List<Strip> thatFit(int height, ChartStyle style) {
    int room = Math.max(1, (height - style.scaled(100)) / style.scaled(LEGIBLE_HEIGHT));
    List<Strip> kept = MATTER_MOST.stream().filter(lines::containsKey).limit(room).toList();
    return strips().stream().filter(kept::contains).toList();
  }

  /** The run from first to last moment. */
  public TimeRange whole() {
    return TimeRange.between(recording.startMs(), recording.endMs());
  }

  /** Some strips over one time axis, with the band of phases, the flags and the notes on top. */
  public StripStack stack(List<Strip> strips, TimeRange range, ChartStyle style) {
    return new StripStack(this, strips.stream().filter(lines::containsKey).toList(), range, style);
  }

  /** One strip over its own time axis, with the band of phases, the flags and the notes on top. */
  public StripStack chart(Strip strip, TimeRange range, ChartStyle style) {
    return stack(List.of(strip), range, style);
  }

  Recording recording() {
    return recording;
  }

  Findings findings() {
    return findings;
  }

  UnitChoice units() {
    return units;
  }

  Moment times() {
    return times;
  }

  Map<Line, Samples> linesOf(Strip strip) {
    return lines.get(strip);
  }

  private static boolean onlyExpected(Map<Line, Samples> found) {
    return found.keySet().stream().allMatch(Line.OfExpectedHeat.class::isInstance);
  }

  private Samples samplesOf(Line line, DisplayUnit unit) {
    if (line instanceof Line.OfChannel one) {
      return recording.of(one.channel()).map(series -> Samples.of(series, unit)).orElse(null);
    }
    if (line instanceof Line.OfTrace one) {
      return isReadDirectly(one.kind())
          ? null
          : findings.traces().stream()
              .filter(trace -> trace.kind() == one.kind() && hasValues(trace))
              .findFirst()
              .map(trace -> Samples.of(trace, unit))
              .orElse(null);
    }
    Samples expected = Samples.ofExpectedHeat(findings.steady(), unit);
    return expected.size() == 0 ? null : expected;
  }

  /** Where the heater's flow is measured, the flow worked out is the same line once more. */
  private boolean isReadDirectly(Trace.Kind kind) {
    return kind == Trace.Kind.HEATER_FLOW && recording.of(Channel.FLOW_HEATER).isPresent();
  }

  private static boolean hasValues(Trace trace) {
    for (double value : trace.values()) {
      if (!Double.isNaN(value)) {
        return true;
      }
    }
    return false;
  }
}
