package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Draw above the threshold for the compressor that is none: a level held for long of which nothing
 * comes, neither lift nor heat. It is a fan that draws much, as one that thaws the coil alone; or
 * another load on the heater's meter, mostly the pool pump, which may draw nearly as much as the
 * compressor, but is there before the compressor first does something, or for longer than any
 * defrost, and without which the draw never is while the water moves. A hot-gas defrost and a
 * compressor that pumps no more come from a rest that draws less. Where the water stands no
 * compressor runs at a small part of its draw: it would draw more than with water, and trip within
 * minutes.
 *
 * @param rest draw of the heater at rest with another load, if there is one
 * @param most the most that is held without a compressor
 */
record IdleDraw(Optional<Double> rest, double most) {
  /** A rest is seen over so long; a compressor's lift and heat show by then (ours). */
  private static final double SEEN_S = 180;

  /** After the first heat also a defrost draws and heats nothing; it is over within this (ours). */
  private static final double NO_DEFROST_S = 1200;

  /** A flow follows the switching of its pump within this time (ours). */
  private static final double EDGE_S = 20;

  /** And within so many readings of each probe (ours). */
  private static final int EDGE_INSTANTS = 3;

  /** From half to half it keeps its level within this share (ours; a pump follows the voltage). */
  private static final double FLAT = 0.05;

  /** Another load stays under this share of what the heater draws while it runs (ours). */
  private static final double MOST_OF_LOAD = 0.8;

  /** And a fan alone under this one (ours, as of a fan that leads a start). */
  private static final double MOST_OF_FAN = 0.4;

  /** A slow compressor shows what it does within this time (ours). */
  private static final double FAN_SEEN_S = 240;

  /** A start that comes on top of a load is over within this time (ours). */
  private static final double START_S = 120;

  /** So much of the full effect is one (ours). */
  private static final double EFFECT = 0.5;

  /**
   * Looks for it.
   *
   * @param plate greatest draw by the nameplate, if stated: where nothing ever comes of any draw,
   *     only that tells what a running heater would draw
   * @param waterMoves whether water moves
   */
  static Optional<IdleDraw> in(
      Timeline timeline,
      double[] draw,
      DrawLevels levels,
      OptionalDouble plate,
      Track waterMoves,
      CompressorEffect effect) {
    int first = effect.firstAbove(EFFECT);
    boolean never = effect.isAbsent() && plate.isPresent();
    // Of a compressor that never runs the threshold is a guess, and a load may lie below it.
    double least =
        never
            ? Math.min(levels.threshold(), LeadingFan.SHARE * plate.getAsDouble())
            : levels.threshold();
    boolean lower = restsLower(timeline, draw, least, waterMoves, first < 0 ? 0 : SEEN_S);
    if (lower && first < 0) {
      return Optional.empty();
    }
    if (lower) {
      // Where nothing tells of the water, the pump may have been off when the draw was lower.
      Optional<IdleDraw> load =
          waterMoves.speaks()
              ? Optional.empty()
              : load(
                  timeline,
                  draw,
                  held(draw, levels.threshold(), MOST_OF_LOAD * levels.compressor(), effect)
                      .filter(one -> leadsToAStart(timeline, draw, one, levels.compressor())),
                  first);
      Stream<Stretch> none =
          held(draw, levels.threshold(), MOST_OF_FAN * levels.compressor(), effect)
              .filter(one -> !isTurnedRound(timeline, draw, one, levels.compressor(), effect));
      return load.or(
          () -> small(timeline, draw, Stream.concat(none, dry(draw, levels, waterMoves, effect))));
    }
    if (first < 0 && !never) {
      return Optional.empty();
    }
    double running =
        never ? plate.getAsDouble() : Math.max(levels.compressor(), effect.drawBeside(draw));
    return load(
            timeline,
            draw,
            held(draw, least, MOST_OF_LOAD * running, effect),
            never ? draw.length : first)
        .or(
            () ->
                never
                    ? Optional.empty()
                    : small(timeline, draw, dry(draw, levels, waterMoves, effect)));
  }

  private static Optional<IdleDraw> load(
      Timeline timeline, double[] draw, Stream<Stretch> held, int until) {
    return held.filter(one -> one.from() < until || one.length() >= timeline.instants(NO_DEFROST_S))
        .filter(one -> !HotDischarge.isIn(timeline, one))
        .map(one -> levels(draw, one, timeline))
        .reduce(IdleDraw::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.of(found.getMin()), found.getMax()));
  }

  /** Whether the water is chilled meanwhile, from one run of the compressor into the next. */
  private static boolean isTurnedRound(
      Timeline timeline, double[] draw, Stretch one, double running, CompressorEffect effect) {
    int before = Math.max(0, one.from() - timeline.instants(START_S));
    boolean ran =
        Arrays.stream(draw, before, one.from()).anyMatch(value -> value >= MOST_OF_FAN * running);
    return ran
        && leadsToAStart(timeline, draw, one, running)
        && effect.chillsBy(one.from(), one.to());
  }

  /** Whether the draw of a running compressor comes on top of a level. */
  private static boolean leadsToAStart(
      Timeline timeline, double[] draw, Stretch held, double running) {
    int to = Math.min(draw.length, held.to() + timeline.instants(START_S));
    for (int i = held.to(); i < to; i++) {
      if (draw[i] >= MOST_OF_LOAD * running) {
        return true;
      }
    }
    return false;
  }

  /** The most that is held over stretches of a draw as small as a fan's. */
  private static Optional<IdleDraw> small(
      Timeline timeline, double[] draw, Stream<Stretch> stretches) {
    return stretches
        .filter(one -> one.length() >= timeline.instants(FAN_SEEN_S))
        .map(one -> levels(draw, one, timeline))
        .reduce(IdleDraw::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.empty(), found.getMax()));
  }

  /** Stretches of a draw as small as a fan's by which the water stands, and the pressures stay. */
  private static Stream<Stretch> dry(
      double[] draw, DrawLevels levels, Track waterMoves, CompressorEffect effect) {
    double to = MOST_OF_FAN * levels.compressor();
    return Stretch.where(
            draw.length, i -> draw[i] >= levels.threshold() && draw[i] < to && waterMoves.no(i))
        .stream()
        .filter(one -> !effect.partsPressures(one.from(), one.to()));
  }

  /** Stretches of a draw between two levels of which nothing comes. */
  private static Stream<Stretch> held(
      double[] draw, double from, double to, CompressorEffect effect) {
    return Stretch.where(
        draw.length,
        i -> draw[i] >= from && draw[i] < to && (effect.isAbsent() || effect.isNone(i)))
        .stream();
  }

  /**
   * Whether the draw is seen below the threshold while the water moves, or may move.
   *
   * @param unknownS for how long at least, where nothing tells whether it moves
   */
  private static boolean restsLower(
      Timeline timeline, double[] draw, double threshold, Track waterMoves, double unknownS) {
    boolean known = waterMoves.speaks();
    int seen =
        Math.max(EDGE_INSTANTS, timeline.instants(known ? EDGE_S : Math.max(EDGE_S, unknownS)));
    return Stretch.where(
            draw.length,
            i -> draw[i] < threshold && (known ? waterMoves.yes(i) : !waterMoves.no(i)))
        .stream()
        .anyMatch(rest -> rest.length() >= seen);
  }

  /** Levels that are held, one for each so many instants of a stretch. */
  private static DoubleSummaryStatistics levels(double[] draw, Stretch stretch, Timeline timeline) {
    int seen = timeline.instants(SEEN_S);
    DoubleSummaryStatistics held = new DoubleSummaryStatistics();
    for (int from = stretch.from(); from + seen <= stretch.to(); from += seen) {
      double early = Stretch.mean(draw, from, from + seen / 2);
      double late = Stretch.mean(draw, from + seen / 2, from + seen);
      if (Math.abs(late - early) <= FLAT * early) {
        held.accept((early + late) / 2);
      }
    }
    return held;
  }

  private static DoubleSummaryStatistics together(
      DoubleSummaryStatistics one, DoubleSummaryStatistics other) {
    one.combine(other);
    return one;
  }
}
