package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
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
  static final double LEAST_COMPRESSOR_W = 400;

  private static final double LEAST_COMPRESSOR_A = 2;

  /** A fan draws at least this much more than the heater at rest (ours). */
  private static final double LEAST_FAN_W = 25;

  private static final double LEAST_FAN_A = 0.12;

  /** And at least this share of the compressor's level (ours). */
  private static final double LEAST_FAN_SHARE = 0.012;

  /** A fan that runs alone is seen at this many instants at least, and for so long (ours). */
  private static final int FAN_SEEN_INSTANTS = 3;

  private static final double FAN_SEEN_S = 10;

  /**
   * A rest, however short beside the rest of the run, is held so long, for so many readings (ours).
   */
  private static final double REST_HELD_S = 60;

  private static final int REST_HELD_INTERVALS = 3;

  /**
   * A start that does not last this long has failed: the compressor stalled (a motor that does not
   * turn trips within some ten seconds: common practice), unless the pressures part meanwhile.
   */
  private static final double STALLED_S = 20;

  /**
   * The same where nothing but the draw ever tells of a running compressor (ours), unless that is
   * the draw of one ({@link ShortRun}).
   */
  private static final double STALLED_WITHOUT_EFFECT_S = 180;

  /** After a stop the draw falls to the fan's within this time (ours). */
  private static final double RUNS_DOWN_S = 8;

  /** An inrush is over within this time (common practice). */
  private static final double BLIP_S = 5;

  /**
   * A silence shorter than this hides no stop and start: against pressures that have not levelled
   * out a compressor does not start (they take a minute or more: common practice).
   */
  private static final double HIDES_NO_RESTART_S = 20;

  /**
   * Reads draw and fan off power, and off current where power is silent.
   *
   * @param effect what a compressor does elsewhere, to tell it from a fan
   */
  static Optional<ElectricDraw> of(
      Timeline timeline, Heater heater, Track waterMoves, CompressorEffect effect) {
    Optional<ElectricDraw> power = read(timeline, Meter.power(heater), waterMoves, effect);
    Optional<ElectricDraw> current = read(timeline, Meter.current(heater), waterMoves, effect);
    Optional<ElectricDraw> either =
        power.isPresent() && current.isPresent()
            ? Optional.of(power.get().orWhereSilent(current.get()))
            : power.or(() -> current);
    int longest = timeline.instants(HIDES_NO_RESTART_S);
    return either.map(draw -> draw.overShortSilences(longest));
  }

  /** What is measured, and what is known of it beforehand. */
  private record Meter(
      Channel channel,
      OptionalDouble plate,
      double leastCompressor,
      double leastFan,
      double beyondFan) {

    static Meter power(Heater heater) {
      return new Meter(
          Channel.POWER,
          heater.greatestRatedW(),
          LEAST_COMPRESSOR_W,
          LEAST_FAN_W,
          heater.beyondFanW());
    }

    static Meter current(Heater heater) {
      return new Meter(
          Channel.CURRENT,
          heater.currentMaxA(),
          LEAST_COMPRESSOR_A,
          LEAST_FAN_A,
          Double.POSITIVE_INFINITY);
    }
  }

  /** With the same answer over silences in which no compressor stops and starts again. */
  private ElectricDraw overShortSilences(int longest) {
    compressor.overSilences(longest);
    fan.overSilences(longest);
    return this;
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
      Timeline timeline, Meter meter, Track waterMoves, CompressorEffect effect) {
    if (!timeline.has(meter.channel())) {
      return Optional.empty();
    }
    double[] draw = timeline.of(meter.channel());
    LevelHistogram all =
        LevelHistogram.of(Spikes.takenFrom(draw, longerThan(STALLED_S, timeline) + 1));
    // The highest level held for a minute, or for two thousandths of a long run: no inrush.
    int held = (int) Math.max(1, Math.max(60_000 / timeline.stepMs(), all.total() / 500));
    DrawLevels levels =
        DrawLevels.of(all, held, meter.plate(), meter.leastCompressor())
            .checked(draw, effect, meter.plate(), meter.beyondFan());
    Optional<IdleDraw> idle =
        IdleDraw.in(timeline, draw, levels, meter.plate(), waterMoves, effect);
    if (idle.isPresent()) {
      levels = levels.above(idle.get().most(), all);
    }
    Track above = above(timeline, meter, levels, effect);
    double least = Math.max(meter.leastFan(), LEAST_FAN_SHARE * levels.compressor());
    OptionalDouble leading =
        LeadingFan.draw(timeline, meter.channel(), above, levels, effect, least);
    if (leading.isPresent()) {
      levels = levels.above(leading.getAsDouble(), all);
    }
    Track compressor = leading.isPresent() ? above(timeline, meter, levels, effect) : above;
    double most = levels.threshold();
    double full = Math.max(levels.compressor(), meter.plate().orElse(0));
    int runsDown = timeline.instants(RUNS_DOWN_S);
    int restHeld =
        timeline.instants(
            Math.max(
                REST_HELD_S, REST_HELD_INTERVALS * timeline.intervalMs(meter.channel()) / 1e3));
    double[] withoutStalls = withoutStalls(draw, tries(draw, levels), compressor, runsDown);
    OptionalDouble beside =
        idle.flatMap(IdleDraw::rest)
            .map(OptionalDouble::of)
            .orElseGet(
                () ->
                    effect.isAbsent()
                        ? OptionalDouble.empty()
                        : WetRest.of(
                            withoutStalls,
                            compressor.after(runsDown),
                            waterMoves,
                            most,
                            LeadingFan.SHARE * full,
                            restHeld));
    StartEdges.move(
        timeline,
        meter.channel(),
        compressor,
        Math.max(
            LeadingFan.SHARE * full,
            LeadingFan.ABOVE * Math.max(leading.orElse(0), beside.orElse(0))));
    double fanThreshold =
        FanThreshold.of(
            withoutStalls,
            compressor.after(runsDown),
            waterMoves,
            beside,
            levels.threshold(),
            Math.max(FAN_SEEN_INSTANTS, timeline.instants(FAN_SEEN_S)),
            restHeld,
            least);
    // Beside another load the usual hysteresis would reach below what is drawn at rest.
    double fanRests =
        beside.isPresent() ? (beside.getAsDouble() + fanThreshold) / 2 : 0.9 * fanThreshold;
    int blip = timeline.instants(BLIP_S);
    Track fan =
        Track.above(draw, fanThreshold, fanRests)
            .withoutBlips(Track.NO, blip)
            .withoutBlips(Track.YES, blip);
    return Optional.of(new ElectricDraw(compressor, fan));
  }

  private static Track above(
      Timeline timeline, Meter meter, DrawLevels levels, CompressorEffect effect) {
    double[] draw = timeline.of(meter.channel());
    double intervalS = timeline.intervalMs(meter.channel()) / 1e3;
    double stalledS = effect.isAbsent() ? STALLED_WITHOUT_EFFECT_S : STALLED_S;
    return tries(draw, levels)
        .withoutBlips(Track.NO, timeline.instants(BLIP_S))
        .withoutBlips(
            Track.YES,
            longerThan(stalledS, timeline),
            (from, to) ->
                effect.partsPressures(from, to)
                    || ShortRun.isIn(draw, from, to, meter.plate(), timeline.stepS(), intervalS));
  }

  /**
   * Instants that only something longer takes: a stall shows at all instants within it, and a line
   * from one reading to the next lets it reach to one more.
   */
  private static int longerThan(double stalledS, Timeline timeline) {
    return (int) (stalledS / timeline.stepS()) + 2;
  }

  /** Where a compressor draws, or a motor that does not start. */
  private static Track tries(double[] draw, DrawLevels levels) {
    return Track.above(draw, levels.threshold() * 1.1, levels.threshold() * 0.9);
  }

  /**
   * The draw without that of a motor that does not start, from the instant before it to some after:
   * what lies on its flanks is no level of a fan.
   */
  private static double[] withoutStalls(
      double[] draw, Track tries, Track compressor, int runsDown) {
    double[] kept = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (tries.yes(i) && compressor.no(i)) {
        Arrays.fill(kept, Math.max(0, i - 1), Math.min(draw.length, i + runsDown + 1), Double.NaN);
      }
    }
    return kept;
  }
}
