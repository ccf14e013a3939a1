package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Inlet and outlet probes exchanged: the heater seems to cool the water it heats. */
public final class ProbesSwapped implements Rule {
  /** Standard uncertainties of the pair by which the rise must be negative; ours. */
  private static final double FACTOR = 3.5;

  /** The smallest rise of a pool heater (common practice), K. */
  private static final double SMALLEST_RISE_K = 1;

  /** And at least this much, K; ours, of that. */
  private static final double LEAST_K = 0.4;

  /** Share of the running time in which it is negative; ours. */
  private static final double NEARLY_ALWAYS = 0.9;

  /** Running time that is needed, s; ours. */
  private static final double LEAST_S = 600;

  /** Air that leaves this much warmer than it entered: the machine cools the pool, K; ours. */
  private static final double COOLING_K = 1;

  private static final Set<Channel> PIPES = Set.of(Channel.WATER_IN, Channel.WATER_OUT);

  @Override
  public String id() {
    return "probes-swapped";
  }

  @Override
  public String summary() {
    return "Inlet and outlet probe are exchanged.";
  }

  @Override
  public String needs() {
    return "water-in and water-out, and power, current or pressure-discharge for the compressor, or"
        + " else a reading of flow";
  }

  @Override
  public String limits() {
    return "Rise below zero by more than 3.5 standard uncertainties of the pair and 0.4 K in 90 % of"
        + " at least 10 min of running, defrosts and the first 5 min left out (ours). Not raised"
        + " where the air leaves warmer than it enters: then the machine cools the pool, nor"
        + " where one of the two stands still (see probe-stuck). "
        + SwappedBySteps.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return Outcome.notEnoughData("no water-in and water-out pair");
    }
    if (!timeline.has(Channel.POWER)
        && !timeline.has(Channel.CURRENT)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return SwappedBySteps.in(
              evidence, Math.max(SMALLEST_RISE_K, FACTOR * pairUncertaintyK(evidence)))
          .map(seen -> Outcome.flagged(flag(seen.startMs(), seen.endMs(), seen.words())))
          .orElseGet(
              () ->
                  Outcome.notEnoughData(
                      "no power, current or pressure-discharge to tell that the compressor runs"));
    }
    boolean[] heats = settledRunning(evidence);
    Optional<RunningRise> rise = RunningRise.in(evidence, heats);
    double limitK = Math.max(LEAST_K, FACTOR * pairUncertaintyK(evidence));
    boolean swapped =
        rise.filter(one -> one.seconds() >= LEAST_S)
            .filter(one -> one.meanK() < -limitK && one.negativeShare() >= NEARLY_ALWAYS)
            .filter(one -> !(one.airMeanK() > COOLING_K))
            .isPresent();
    return swapped && !stands(evidence)
        ? Outcome.flagged(flag(evidence, heats, rise.orElseThrow()))
        : Outcome.clear();
  }

  /** Whether one of the pair is stuck: against a value that stands, any rise may seem negative. */
  private static boolean stands(Evidence evidence) {
    return new ProbeStuck().evaluate(evidence) instanceof Outcome.Flagged stuck
        && stuck.flags().stream().anyMatch(flag -> !Collections.disjoint(flag.channels(), PIPES));
  }

  /** Compressor on for some minutes, no defrost in them, water not known to stand. */
  private static boolean[] settledRunning(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    return SettledRunning.in(
        timeline, i -> phases.compressorRuns(i) && !phases.is(i, Phase.DEFROST) && !moves.no(i));
  }

  private static double pairUncertaintyK(Evidence evidence) {
    if (evidence.zero().isPresent()) {
      Estimate zero = evidence.zero().get().offsetK();
      return zero.standard();
    }
    return ProbeUncertainty.ofDifference(
        evidence.recording().rig(), Channel.WATER_IN, Channel.WATER_OUT);
  }

  private Flag flag(Evidence evidence, boolean[] heats, RunningRise rise) {
    Timeline timeline = evidence.timeline();
    StringBuilder text = new StringBuilder(160);
    text.append("water-out reads ")
        .append(Wording.kelvin(-rise.meanK()))
        .append(" below water-in over ")
        .append(Wording.duration(rise.seconds()))
        .append(" of running");
    if (timeline.has(Channel.WATER_POOL)) {
      double[] pool = timeline.of(Channel.WATER_POOL);
      double fromIn = mean(heats, timeline.of(Channel.WATER_IN), pool);
      double fromOut = mean(heats, timeline.of(Channel.WATER_OUT), pool);
      if (Math.abs(fromOut) < Math.abs(fromIn)) {
        text.append("; the pool agrees with water-out, not with water-in");
      }
    }
    return flag(
        timeline.timeMs(rise.span().from()),
        timeline.timeMs(rise.span().to() - 1),
        text.toString());
  }

  private Flag flag(long startMs, long endMs, String text) {
    return new Flag(
        id(),
        Side.MEASUREMENT,
        Severity.WARNING,
        startMs,
        endMs,
        text,
        List.of(
            "inlet and outlet probe exchanged, on the pipes or in the rig",
            "water runs through the heater the wrong way",
            "machine set to cooling"),
        "Follow both pipes by hand: the one from the filter is water-in. Exchange the two probes in"
            + " the rig; the readings stay usable.",
        Set.of(Channel.WATER_IN, Channel.WATER_OUT));
  }

  private static double mean(boolean[] where, double[] values, double[] less) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < where.length; i++) {
      double difference = values[i] - less[i];
      if (where[i] && !Double.isNaN(difference)) {
        sum += difference;
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }
}
