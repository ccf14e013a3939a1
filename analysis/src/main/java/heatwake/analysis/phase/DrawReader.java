package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads compressor and fan off one meter. A heater draws on three levels: at rest (control, perhaps
 * a crankcase heater), fan alone, compressor. The thresholds between them are laid into the gaps of
 * the run's own distribution, near what the nameplate lets expect.
 */
final class DrawReader {
  /** A fan draws at least this share of the compressor's level more than the rest (ours). */
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

  private final Timeline timeline;
  private final DrawMeter meter;
  private final Track waterMoves;
  private final CompressorEffect effect;
  private final double[] draw;
  private final LevelHistogram all;

  private DrawReader(
      Timeline timeline, DrawMeter meter, Track waterMoves, CompressorEffect effect) {
    this.timeline = timeline;
    this.meter = meter;
    this.waterMoves = waterMoves;
    this.effect = effect;
    this.draw = timeline.of(meter.channel());
    this.all = LevelHistogram.of(Spikes.takenFrom(draw, longerThan(STALLED_S) + 1));
  }

  /** What one meter says; empty if the run has none of its readings. */
  static Optional<ElectricDraw> read(
      Timeline timeline, DrawMeter meter, Track waterMoves, CompressorEffect effect) {
    return timeline.has(meter.channel())
        ? Optional.of(new DrawReader(timeline, meter, waterMoves, effect).read())
        : Optional.empty();
  }

  private ElectricDraw read() {
    DrawLevels levels = levels();
    Optional<IdleDraw> idle =
        new IdleDrawSearch(timeline, draw, levels, waterMoves, effect).found(meter.plate());
    if (idle.isPresent()) {
      levels = levels.above(idle.get().most(), all);
    }
    Track compressor = compressor(levels);
    double least = Math.max(meter.leastFan(), LEAST_FAN_SHARE * levels.compressor());
    OptionalDouble leading =
        LeadingFan.draw(timeline, meter.channel(), compressor, levels, effect, least);
    if (leading.isPresent()) {
      levels = levels.above(leading.getAsDouble(), all);
      compressor = compressor(levels);
    }
    double[] withoutStalls = withoutStalls(tries(levels), compressor);
    OptionalDouble beside = beside(idle.flatMap(IdleDraw::rest), withoutStalls, compressor, levels);
    moveStarts(compressor, levels, Math.max(leading.orElse(0), beside.orElse(0)));
    return new ElectricDraw(compressor, fan(withoutStalls, compressor, levels, beside, least));
  }

  private DrawLevels levels() {
    // The highest level held for a minute, or for two thousandths of a long run: no inrush.
    int held = (int) Math.max(1, Math.max(60_000 / timeline.stepMs(), all.total() / 500));
    return DrawLevels.of(all, held, meter.plate(), meter.leastCompressor(), effect)
        .checked(draw, effect, meter.plate(), meter.beyondFan());
  }

  private Track compressor(DrawLevels levels) {
    double intervalS = timeline.intervalMs(meter.channel()) / 1e3;
    double stalledS = effect.isAbsent() ? STALLED_WITHOUT_EFFECT_S : STALLED_S;
    return tries(levels)
        .withoutBlips(Track.NO, timeline.instants(BLIP_S))
        .withoutBlips(
            Track.YES,
            longerThan(stalledS),
            (from, to) ->
                effect.partsPressures(from, to)
                    || ShortRun.isIn(draw, from, to, meter.plate(), timeline.stepS(), intervalS));
  }

  /** Where a compressor draws, or a motor that does not start. */
  private Track tries(DrawLevels levels) {
    return Track.above(draw, levels.threshold() * 1.1, levels.threshold() * 0.9);
  }

  /** What is drawn beside fan and compressor, if a rest shows it. */
  private OptionalDouble beside(
      Optional<Double> atRest, double[] withoutStalls, Track compressor, DrawLevels levels) {
    if (atRest.isPresent()) {
      return OptionalDouble.of(atRest.get());
    }
    return effect.isAbsent()
        ? OptionalDouble.empty()
        : WetRest.of(
            withoutStalls,
            compressor.after(runsDown()),
            waterMoves,
            levels.threshold(),
            leadingFan(levels),
            restHeld());
  }

  /** Moves the starts to the feet of the draw's climbs, above what is drawn before them. */
  private void moveStarts(Track compressor, DrawLevels levels, double before) {
    StartEdges.move(
        timeline,
        meter.channel(),
        compressor,
        Math.max(leadingFan(levels), LeadingFan.ABOVE * before));
  }

  /** The most that a fan before a start draws, by its share of the compressor's draw. */
  private double leadingFan(DrawLevels levels) {
    return LeadingFan.SHARE * Math.max(levels.compressor(), meter.plate().orElse(0));
  }

  private Track fan(
      double[] withoutStalls,
      Track compressor,
      DrawLevels levels,
      OptionalDouble beside,
      double least) {
    double threshold =
        FanThreshold.of(
            withoutStalls,
            compressor.after(runsDown()),
            waterMoves,
            beside,
            levels.threshold(),
            Math.max(FAN_SEEN_INSTANTS, timeline.instants(FAN_SEEN_S)),
            restHeld(),
            least);
    // Beside another load the usual hysteresis would reach below what is drawn at rest.
    double rests = beside.isPresent() ? (beside.getAsDouble() + threshold) / 2 : 0.9 * threshold;
    int blip = timeline.instants(BLIP_S);
    return Track.above(draw, threshold, rests)
        .withoutBlips(Track.NO, blip)
        .withoutBlips(Track.YES, blip);
  }

  private int runsDown() {
    return timeline.instants(RUNS_DOWN_S);
  }

  private int restHeld() {
    return timeline.instants(
        Math.max(REST_HELD_S, REST_HELD_INTERVALS * timeline.intervalMs(meter.channel()) / 1e3));
  }

  /**
   * Instants that only something longer takes: a stall shows at all instants within it, and a line
   * from one reading to the next lets it reach to one more.
   */
  private int longerThan(double stalledS) {
    return (int) (stalledS / timeline.stepS()) + 2;
  }

  /**
   * The draw without that of a motor that does not start, from the instant before it to some after:
   * what lies on its flanks is no level of a fan.
   */
  private double[] withoutStalls(Track tries, Track compressor) {
    double[] kept = draw.clone();
    for (int i = 0; i < draw.length; i++) {
      if (tries.yes(i) && compressor.no(i)) {
        int to = Math.min(draw.length, i + runsDown() + 1);
        Arrays.fill(kept, Math.max(0, i - 1), to, Double.NaN);
      }
    }
    return kept;
  }
}
