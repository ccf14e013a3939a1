package heatwake.analysis.rule.airflow;

import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.RunningStretch;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads stretches of running off the grid. */
final class IcingStretches {
  private static final long SETTLING_MS = 360_000;
  private static final double BLOCK_S = 180;

  /** What a run's end cuts off may be a defrost of up to this length; common practice. */
  private static final long DEFROST_MS = 720_000;

  private static final int FEWEST_BLOCKS = 3;

  private final Timeline timeline;
  private final double[] output;
  private final Optional<double[]> evaporating;
  private final double[] power;
  private final Channel air;
  private final double[] riseK;
  private final RiseDoubt doubt;

  /**
   * Looks at a run.
   *
   * @param output heat, or rise where that is not known
   * @param power what the heater draws, NaN where it is not known
   * @param air where the entering air is read
   * @param riseK temperature rise of the water, NaN where it is not known
   * @param doubt what its probes leave open
   */
  IcingStretches(
      Timeline timeline,
      double[] output,
      Optional<double[]> evaporating,
      double[] power,
      Channel air,
      double[] riseK,
      RiseDoubt doubt) {
    this.timeline = timeline;
    this.output = output;
    this.evaporating = evaporating;
    this.power = power;
    this.air = air;
    this.riseK = riseK;
    this.doubt = doubt;
  }

  List<IcingStretch> of(List<PhaseSpan> phases) {
    return RunningStretch.of(phases).stream().flatMap(this::stretches).toList();
  }

  private Stream<IcingStretch> stretches(RunningStretch running) {
    int from = timeline.firstAtOrAfter(running.startMs() + SETTLING_MS);
    int to = timeline.firstAtOrAfter(running.endMs() - cutOffMs(running));
    List<Stretch> heating = new SuddenFalls(timeline, output).between(from, to);
    return heating.stream()
        .flatMap(
            one -> stretch(one.from(), one.to(), one.to() < to || running.defrosted()).stream());
  }

  private Optional<IcingStretch> stretch(int from, int until, boolean defrosted) {
    int to = until;
    while (to > from && Double.isNaN(output[to - 1])) {
      to--;
    }
    int block = (int) Math.max(2, Math.round(BLOCK_S / timeline.stepS()));
    int blocks = (to - from) / block;
    if (blocks < FEWEST_BLOCKS) {
      return Optional.empty();
    }
    int at = best(from, block, blocks / 2);
    double peak = Stretch.mean(output, at, at + block);
    // The last instants before a stop or defrost already belong to it.
    int end = to - block / 3;
    double last = Stretch.mean(output, end - block, end);
    if (!(peak > 0) || Double.isNaN(last)) {
      return Optional.empty();
    }
    double[] airK = timeline.of(air);
    double airThen = Stretch.mean(airK, at, at + block);
    double airNow = Stretch.mean(airK, end - block, end);
    double cooler = Double.isNaN(airThen - airNow) ? 0 : airThen - airNow;
    double coilThen =
        evaporating.map(coil -> Stretch.mean(coil, at, at + block)).orElse(Double.NaN);
    double coilNow =
        evaporating.map(coil -> Stretch.mean(coil, end - block, end)).orElse(Double.NaN);
    double loss = 1 - last / peak - IcingStretch.HEAT_PER_AIR_K * cooler;
    return Optional.of(
        new IcingStretch(
            timeline.timeMs(at),
            timeline.timeMs(end - 1),
            peak,
            new IcingStretch.Loss(loss, Stretch.mean(riseK, at, at + block), doubt),
            airNow,
            coilNow,
            coilThen - coilNow - cooler,
            airThen - coilThen,
            Stretch.mean(power, end - block, end) / Stretch.mean(power, at, at + block),
            defrosted,
            LastingIce.of(
                output,
                airK,
                evaporating.orElseGet(this::noCoil),
                power,
                new int[] {at, at + block},
                end,
                timeline.stepS())));
  }

  private double[] noCoil() {
    double[] none = new double[timeline.size()];
    Arrays.fill(none, Double.NaN);
    return none;
  }

  /** A defrost is known by the heating after it, so at the end of a run it is not told from ice. */
  private static long cutOffMs(RunningStretch running) {
    return running.endedBy().isEmpty() ? DEFROST_MS : 0;
  }

  /** Where the best block of output begins, among the first ones. */
  private int best(int from, int block, int last) {
    int at = from;
    double peak = Double.NEGATIVE_INFINITY;
    for (int b = 0; b <= last; b++) {
      double mean = Stretch.mean(output, from + b * block, from + (b + 1) * block);
      if (mean > peak) {
        peak = mean;
        at = from + b * block;
      }
    }
    return at;
  }
}
