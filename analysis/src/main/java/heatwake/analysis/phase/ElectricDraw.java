package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rating;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the heater's electric draw says of compressor and fan. A heater draws on three levels: at
 * rest (control, perhaps a crankcase heater), fan alone, compressor. The thresholds between them
 * are laid into the gaps of the run's own distribution, near what the nameplate lets expect.
 *
 * @param compressor whether the compressor draws
 * @param fan whether at least the fan draws
 */
record ElectricDraw(Track compressor, Track fan) {

  /** A top level under this is no compressor, unless the nameplate says otherwise (ours). */
  private static final double LEAST_COMPRESSOR_W = 400;

  private static final double LEAST_COMPRESSOR_A = 2;

  /** A fan draws at least this much more than the heater at rest (ours). */
  private static final double LEAST_FAN_W = 25;

  private static final double LEAST_FAN_A = 0.12;

  /** And at least this share of the compressor's level (ours). */
  private static final double LEAST_FAN_SHARE = 0.012;

  /** A fan that runs alone is seen at this many instants at least (ours). */
  private static final int FAN_SEEN_INSTANTS = 3;

  /** A start that does not last this long has failed: the compressor stalled (ours). */
  private static final double STALLED_S = 30;

  /** An inrush is over within this time (common practice). */
  private static final double BLIP_S = 5;

  /** A soft start reaches twice the threshold within this time (common practice). */
  private static final double CLIMB_S = 90;

  /**
   * A climb between threshold and twice the threshold that takes this long is a soft start (ours).
   */
  private static final double SOFT_S = 5;

  /** Nor is the time between readings taken for a climb (ours). */
  private static final int SOFT_INTERVALS = 2;

  /**
   * Reads draw and fan off power, and off current where power is silent.
   *
   * @param noEffect whether pressures and water temperatures, where read, show no compressor all
   *     run
   */
  static Optional<ElectricDraw> of(
      Timeline timeline, Heater heater, Track waterMoves, boolean noEffect) {
    Optional<ElectricDraw> power = read(timeline, Meter.power(heater), waterMoves, noEffect);
    Optional<ElectricDraw> current = read(timeline, Meter.current(heater), waterMoves, noEffect);
    if (power.isPresent() && current.isPresent()) {
      return Optional.of(power.get().orWhereSilent(current.get()));
    }
    return power.or(() -> current);
  }

  /** What is measured, and what is known of it beforehand. */
  private record Meter(
      Channel channel, OptionalDouble plate, double leastCompressor, double leastFan) {

    static Meter power(Heater heater) {
      OptionalDouble rated =
          heater.ratings().stream()
              .map(Rating::powerW)
              .filter(OptionalDouble::isPresent)
              .mapToDouble(OptionalDouble::getAsDouble)
              .max();
      return new Meter(Channel.POWER, rated, LEAST_COMPRESSOR_W, LEAST_FAN_W);
    }

    static Meter current(Heater heater) {
      return new Meter(Channel.CURRENT, heater.currentMaxA(), LEAST_COMPRESSOR_A, LEAST_FAN_A);
    }
  }

  private ElectricDraw orWhereSilent(ElectricDraw other) {
    for (int i = 0; i < compressor.size(); i++) {
      if (!compressor.known(i)) {
        compressor.set(i, other.compressor.at(i));
        fan.set(i, other.fan.at(i));
      }
    }
    return this;
  }

  private static Optional<ElectricDraw> read(
      Timeline timeline, Meter meter, Track waterMoves, boolean noEffect) {
    if (!timeline.has(meter.channel())) {
      return Optional.empty();
    }
    double[] draw = timeline.of(meter.channel());
    LevelHistogram all = LevelHistogram.of(draw);
    // The highest level held for a minute, or for two thousandths of a long run: no inrush.
    int held = (int) Math.max(1, Math.max(60_000 / timeline.stepMs(), all.total() / 500));
    DrawLevels levels = DrawLevels.of(all, held, meter.plate(), meter.leastCompressor());
    if (noEffect && meter.plate().isPresent()) {
      DrawLevels higher = DrawLevels.aboveAnyFan(meter.plate().getAsDouble());
      levels = all.highestHeld(held) < higher.threshold() ? higher : levels;
    }
    int blip = (int) Math.ceil(BLIP_S / timeline.stepS());
    int stalled = (int) Math.ceil(STALLED_S / timeline.stepS());
    Track compressor =
        Track.above(draw, levels.threshold() * 1.1, levels.threshold() * 0.9)
            .withoutBlips(Track.NO, blip)
            .withoutBlips(Track.YES, stalled);
    backdateSoftStarts(timeline, meter, draw, compressor, levels.threshold());
    double least = Math.max(meter.leastFan(), LEAST_FAN_SHARE * levels.compressor());
    double fanThreshold = fanThreshold(draw, compressor, waterMoves, levels, least);
    Track fan =
        Track.above(draw, fanThreshold, fanThreshold * 0.9)
            .withoutBlips(Track.NO, blip)
            .withoutBlips(Track.YES, blip);
    return Optional.of(new ElectricDraw(compressor, fan));
  }

  /**
   * An inverter climbs for a while before its draw passes the threshold. It began where the line of
   * its climb meets the level before.
   */
  private static void backdateSoftStarts(
      Timeline timeline, Meter meter, double[] draw, Track compressor, double threshold) {
    int longest = (int) Math.ceil(CLIMB_S / timeline.stepS());
    double softS = Math.max(SOFT_S, SOFT_INTERVALS * timeline.intervalMs(meter.channel()) / 1e3);
    int least = (int) Math.ceil(softS / timeline.stepS());
    for (int i = 1; i < draw.length; i++) {
      if (!compressor.yes(i) || !compressor.no(i - 1)) {
        continue;
      }
      int twice = i;
      while (twice < draw.length && twice - i <= longest && !(draw[twice] >= 2 * threshold)) {
        twice++;
      }
      int climb = twice - i;
      if (climb >= least && climb <= longest && twice < draw.length) {
        double level = draw[Math.max(0, i - 2 * climb)];
        double share = Double.isNaN(level) ? 1 : Math.max(0, 1 - level / threshold);
        int foot = Math.max(0, i - (int) Math.round(climb * share));
        while (foot < i && !compressor.no(foot)) {
          foot++;
        }
        compressor.fill(foot, i, Track.YES);
      }
    }
  }

  private static double fanThreshold(
      double[] draw, Track compressor, Track waterMoves, DrawLevels levels, double least) {
    double[] idle = draw.clone();
    double[] standing = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (!compressor.no(i) || draw[i] > levels.threshold()) {
        idle[i] = Double.NaN;
      }
      if (!compressor.no(i) || !waterMoves.no(i)) {
        standing[i] = Double.NaN;
      }
    }
    LevelHistogram atRest = LevelHistogram.of(standing);
    LevelHistogram compressorRests = LevelHistogram.of(idle);
    double rest = atRest.total() > 0 ? atRest.quantile(0.5) : compressorRests.quantile(0.05);
    if (Double.isNaN(rest)) {
      return least;
    }
    // Without a look at the heater at rest a lone low level may be the fan itself.
    double base = atRest.total() > 0 ? rest : Math.min(rest, 2 * least);
    double lowest = base + least;
    double highest = Math.max(lowest, compressorRests.highestHeld(FAN_SEEN_INSTANTS));
    return Math.max(lowest, compressorRests.valley(lowest, highest));
  }
}
