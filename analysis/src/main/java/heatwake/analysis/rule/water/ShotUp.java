package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;

/**
 * A high side that shoots up within two minutes until the compressor stops, again and again, though
 * the heater runs steadily far below that at other times. Nothing but water that is lost takes all
 * of a condenser's cooling at once: scale, gas and charge raise it for good.
 *
 * @param levelPa where it stands while the heater runs steadily, gauge
 * @param peakPa the highest of its peaks, gauge
 * @param stops cycles that ended so
 */
record ShotUp(double levelPa, double peakPa, List<Cycle> stops) {
  /** Water is lost, and the switch opens, within this time, ms; common practice: a minute. */
  private static final long WITHIN_MS = 120_000;

  /** The pressure has nothing of a start so long before it, however it is dated, ms; ours. */
  private static final long BEFORE_START_MS = 30_000;

  /** A stop is seen in the power up to this much before the pressure's greatest reading; ours. */
  private static final long AFTER_STOP_MS = 10_000;

  /**
   * So many times the steady pressure, absolute. From 40 Cel to the 60 Cel at which switches open
   * at the earliest it is 1.6 times (saturation lines of pool heaters' refrigerants).
   */
  private static final double SHOT = 1.4;

  /** Until shortly before it was no higher than this; ours. */
  private static final double USUAL = 1.15;

  /** One stop so may be chance; ours. */
  private static final int FEWEST = 2;

  /** The steady level takes so long to be known, s; ours. */
  private static final double LEVEL_S = 300;

  private static final double ATMOSPHERE_PA = AbsolutePressure.STANDARD_ATMOSPHERE.pa();

  ShotUp {
    stops = List.copyOf(stops);
  }

  /** Such stops of a run, where no meter tells of the heater's water. */
  static Optional<ShotUp> of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.PRESSURE_DISCHARGE) || timeline.has(Channel.FLOW_HEATER)) {
      return Optional.empty();
    }
    double[] pascals = timeline.of(Channel.PRESSURE_DISCHARGE);
    double levelPa = steadyLevel(timeline, evidence.phaseGrid(), pascals);
    double highest = Double.NaN;
    List<Cycle> stops = new ArrayList<>();
    for (Cycle cycle : evidence.cycles()) {
      if (cycle.stopMs().isPresent()) {
        long stopMs = cycle.stopMs().getAsLong();
        int from =
            timeline.firstAtOrAfter(
                Math.max(cycle.startMs() - BEFORE_START_MS, stopMs - WITHIN_MS));
        int to = timeline.firstAtOrAfter(stopMs + AFTER_STOP_MS + 1);
        double peak = peak(pascals, from, to);
        double before = from < pascals.length ? pascals[from] : Double.NaN;
        if (peak + ATMOSPHERE_PA > SHOT * (levelPa + ATMOSPHERE_PA)
            && before + ATMOSPHERE_PA < USUAL * (levelPa + ATMOSPHERE_PA)) {
          stops.add(cycle);
          highest = highest > peak ? highest : peak;
        }
      }
    }
    return stops.size() < FEWEST
        ? Optional.empty()
        : Optional.of(new ShotUp(levelPa, highest, stops));
  }

  private static double steadyLevel(Timeline timeline, PhaseGrid phases, double[] pascals) {
    IntPredicate steady = i -> phases.is(i, Phase.STEADY);
    int last = timeline.instants(WITHIN_MS / 1e3);
    double[] level =
        Stretch.where(phases.size(), steady).stream()
            .flatMapToInt(one -> IntStream.range(one.from(), one.to() - last))
            .mapToDouble(i -> pascals[i])
            .filter(value -> !Double.isNaN(value))
            .toArray();
    return level.length < timeline.instants(LEVEL_S)
        ? Double.NaN
        : Median.withDefaults().evaluate(level);
  }

  private static double peak(double[] pascals, int from, int to) {
    return Arrays.stream(pascals, Math.min(from, pascals.length), Math.min(to, pascals.length))
        .filter(value -> !Double.isNaN(value))
        .max()
        .orElse(Double.NaN);
  }

  Flag flag(String rule) {
    return new Flag(
        rule,
        Side.WATER,
        Severity.ALARM,
        stops.get(0).stopMs().orElseThrow(),
        stops.get(stops.size() - 1).stopMs().orElseThrow(),
        "High side shot up from "
            + Wording.megapascals(levelPa)
            + " to "
            + Wording.megapascals(peakPa)
            + " within 2 min until the compressor stopped, "
            + stops.size()
            + " times: the heater had lost its water",
        List.of(
            "valve at the heater closed, or bypass fully open",
            "pump stopped or lost its prime",
            "flow switch stuck closed, bridged or set too low: it let the heater run"),
        NoFlow.SEE_PUMP_AND_VALVES,
        Set.of(Channel.PRESSURE_DISCHARGE));
  }
}
