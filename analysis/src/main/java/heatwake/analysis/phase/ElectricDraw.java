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

  /**
   * The threshold lies between these shares of the compressor's level (ours; inverters go to 0.2).
   */
  private static final double LOWEST_SHARE = 0.05;

  /** The compressor's level is the middle of all draw above this share of the top (ours). */
  private static final double RUNNING_SHARE = 0.3;

  private static final double HIGHEST_SHARE = 0.5;

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

  static Optional<ElectricDraw> of(Timeline timeline, Heater heater, Track waterMoves) {
    Optional<ElectricDraw> power =
        read(
            timeline,
            Channel.POWER,
            nameplatePowerW(heater),
            LEAST_COMPRESSOR_W,
            LEAST_FAN_W,
            waterMoves);
    Optional<ElectricDraw> current =
        read(
            timeline,
            Channel.CURRENT,
            heater.currentMaxA(),
            LEAST_COMPRESSOR_A,
            LEAST_FAN_A,
            waterMoves);
    if (power.isPresent() && current.isPresent()) {
      return Optional.of(power.get().orWhereSilent(current.get()));
    }
    return power.or(() -> current);
  }

  private static OptionalDouble nameplatePowerW(Heater heater) {
    return heater.ratings().stream()
        .map(Rating::powerW)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max();
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
      Timeline timeline,
      Channel channel,
      OptionalDouble nameplate,
      double leastCompressor,
      double leastFan,
      Track waterMoves) {
    if (!timeline.has(channel)) {
      return Optional.empty();
    }
    double[] draw = timeline.of(channel);
    LevelHistogram all = LevelHistogram.of(draw);
    // The highest level held for a minute, or for two thousandths of a long run: no inrush.
    int held = (int) Math.max(1, Math.max(60_000 / timeline.stepMs(), all.total() / 500));
    double top = all.highestHeld(held);
    double compressorLevel =
        Math.max(all.medianFrom(RUNNING_SHARE * top), 0.5 * nameplate.orElse(0));
    double threshold =
        compressorLevel < leastCompressor && nameplate.isEmpty()
            ? leastCompressor
            : all.valley(LOWEST_SHARE * compressorLevel, HIGHEST_SHARE * compressorLevel);
    int blip = (int) Math.ceil(BLIP_S * 1000 / timeline.stepMs());
    int stalled = (int) Math.ceil(STALLED_S * 1000 / timeline.stepMs());
    Track compressor =
        Track.above(draw, threshold * 1.1, threshold * 0.9)
            .withoutBlips(Track.NO, blip)
            .withoutBlips(Track.YES, stalled);
    double fanThreshold =
        fanThreshold(draw, compressor, waterMoves, leastFan, LEAST_FAN_SHARE * compressorLevel);
    Track fan =
        Track.above(draw, fanThreshold, fanThreshold * 0.9)
            .withoutBlips(Track.NO, blip)
            .withoutBlips(Track.YES, blip);
    return Optional.of(new ElectricDraw(compressor, fan));
  }

  private static double fanThreshold(
      double[] draw, Track compressor, Track waterMoves, double leastFan, double leastShare) {
    double[] idle = draw.clone();
    double[] standing = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (!compressor.no(i)) {
        idle[i] = Double.NaN;
      }
      if (!compressor.no(i) || !waterMoves.no(i)) {
        standing[i] = Double.NaN;
      }
    }
    LevelHistogram atRest = LevelHistogram.of(standing);
    LevelHistogram compressorRests = LevelHistogram.of(idle);
    double rest = atRest.total() > 0 ? atRest.quantile(0.5) : compressorRests.quantile(0.05);
    double least = Math.max(leastFan, leastShare);
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
