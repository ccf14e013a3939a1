package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The compressor starts of a run and what they do to the pressures. */
public final class PressedStarts {
  /** The pressures have settled this long after the start; common practice. */
  private static final long SETTLED_MS = 150_000;

  private static final long LOOKED_AT_MS = 150_000;

  /** The sides are taken as equalised after this rest; common practice. */
  private static final long REST_MS = 180_000;

  private static final long BEFORE_MS = 60_000;

  /** Water that still takes up this much says that the compressor pumps after all; ours. */
  private static final double WARMING_RISE_K = 1.0;

  private static final double WARMING_SHARE = 0.5;

  /** Heat under this share of the expected is none of a compressor that compresses; ours. */
  private static final double LITTLE_SHARE = 0.25;

  private final Evidence evidence;
  private final List<StartPressures> starts;

  private PressedStarts(Evidence evidence, List<StartPressures> starts) {
    this.evidence = evidence;
    this.starts = starts;
  }

  /** Those with pressures before and after them, in order. */
  public static PressedStarts in(Evidence evidence) {
    return new PressedStarts(evidence, read(evidence));
  }

  /** Whether there is none to be judged. */
  boolean isEmpty() {
    return starts.isEmpty();
  }

  /**
   * The start of the compressor at a moment; empty if there is none, or it is not to be judged.
   *
   * @param startMs when it started, UTC milliseconds
   */
  public Optional<StartPressures> at(long startMs) {
    return starts.stream().filter(one -> one.cycle().startMs() == startMs).findFirst();
  }

  /** Those at which the high side hardly rose, in order; such that follow one another together. */
  public List<FailedStarts> failed() {
    return Stretch.where(starts.size(), i -> starts.get(i).failed()).stream()
        .map(row -> FailedStarts.of(starts.subList(row.from(), row.to()), evidence))
        .toList();
  }

  private static List<StartPressures> read(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    List<StartPressures> found = new ArrayList<>();
    long restedSinceMs = evidence.recording().startMs();
    for (Cycle cycle : evidence.cycles()) {
      long stopMs = cycle.stopMs().orElse(evidence.recording().endMs());
      long fromMs = cycle.startMs() + SETTLED_MS;
      long toMs = Math.min(fromMs + LOOKED_AT_MS, stopMs);
      boolean seen =
          cycle.startSeen()
              && toMs - fromMs >= LOOKED_AT_MS / 2
              && ((found.isEmpty() && cycle.startMs() - restedSinceMs >= BEFORE_MS)
                  || cycle.startMs() - restedSinceMs >= REST_MS);
      restedSinceMs = stopMs;
      if (!seen) {
        continue;
      }
      OptionalDouble before =
          timeline.meanBetween(
              Channel.PRESSURE_DISCHARGE, cycle.startMs() - BEFORE_MS, cycle.startMs() - 1);
      OptionalDouble after = timeline.meanBetween(Channel.PRESSURE_DISCHARGE, fromMs, toMs);
      if (before.isPresent() && after.isPresent()) {
        OptionalDouble rise = rise(evidence, fromMs, toMs);
        found.add(
            new StartPressures(
                cycle,
                stopMs,
                before.getAsDouble(),
                after.getAsDouble(),
                timeline.meanBetween(Channel.PRESSURE_SUCTION, fromMs, toMs),
                timeline.meanBetween(Channel.POWER, fromMs, toMs),
                WaterLift.pa(
                    evidence,
                    timeline.meanBetween(
                        Channel.PRESSURE_SUCTION, cycle.startMs() - BEFORE_MS, cycle.startMs() - 1),
                    fromMs,
                    toMs,
                    stopMs,
                    StartPressures.LEAST_RISE),
                warmed(evidence, rise, cycle.startMs(), stopMs),
                rise.isPresent(),
                givesLittle(evidence, cycle.startMs(), stopMs)));
      }
    }
    return found;
  }

  private static OptionalDouble rise(Evidence evidence, long fromMs, long toMs) {
    OptionalDouble in = evidence.timeline().meanBetween(Channel.WATER_IN, fromMs, toMs);
    OptionalDouble out = evidence.timeline().meanBetween(Channel.WATER_OUT, fromMs, toMs);
    if (in.isEmpty() || out.isEmpty()) {
      return OptionalDouble.empty();
    }
    double offsetK = evidence.zero().map(zero -> zero.offsetK().value()).orElse(0.0);
    return OptionalDouble.of(out.getAsDouble() - in.getAsDouble() - offsetK);
  }

  /** Whether a heat is known, and is beyond doubt under a quarter of the expected. */
  private static boolean givesLittle(Evidence evidence, long fromMs, long toMs) {
    return evidence.duty().stream()
        .filter(duty -> duty.endMs() > fromMs && duty.startMs() < toMs)
        .flatMap(duty -> duty.of(DutyFigure.HEAT_RATIO).stream())
        .findFirst()
        .filter(ratio -> Doubt.below(ratio, LITTLE_SHARE))
        .isPresent();
  }

  private static boolean warmed(Evidence evidence, OptionalDouble rise, long fromMs, long toMs) {
    for (Duty duty : evidence.duty()) {
      if (duty.endMs() > fromMs && duty.startMs() < toMs && duty.has(DutyFigure.HEAT_RATIO)) {
        return duty.of(DutyFigure.HEAT_RATIO).orElseThrow().value() > WARMING_SHARE;
      }
    }
    return rise.isPresent() && rise.getAsDouble() > WARMING_RISE_K;
  }
}
