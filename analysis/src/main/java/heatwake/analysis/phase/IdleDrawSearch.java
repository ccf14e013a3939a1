package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Looks for draw of which nothing comes. Another load may draw nearly as much as the compressor,
 * but is there before the compressor first does something, or for longer than any defrost, and
 * without it the draw never is while the water moves. A hot-gas defrost and a compressor that pumps
 * no more come from a rest that draws less. Where the water stands no compressor runs at a small
 * part of its draw: it would draw more than with water, and trip within minutes.
 */
final class IdleDrawSearch {
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

  private final Timeline timeline;
  private final double[] draw;
  private final DrawLevels levels;
  private final Track waterMoves;
  private final CompressorEffect effect;

  /**
   * Looks through the draw of a run.
   *
   * @param levels what the draw's own distribution makes of it
   * @param waterMoves whether water moves
   */
  IdleDrawSearch(
      Timeline timeline,
      double[] draw,
      DrawLevels levels,
      Track waterMoves,
      CompressorEffect effect) {
    this.timeline = timeline;
    this.draw = draw;
    this.levels = levels;
    this.waterMoves = waterMoves;
    this.effect = effect;
  }

  /**
   * What there is of it.
   *
   * @param plate greatest draw by the nameplate, if stated: where nothing ever comes of any draw,
   *     only that tells what a running heater would draw
   */
  Optional<IdleDraw> found(OptionalDouble plate) {
    int first = effect.firstAbove(EFFECT);
    boolean never = effect.isAbsent() && plate.isPresent();
    // Of a compressor that never runs the threshold is a guess, and a load may lie below it.
    double least =
        never
            ? Math.min(levels.threshold(), LeadingFan.SHARE * plate.getAsDouble())
            : levels.threshold();
    boolean lower = restsLower(least, first < 0 ? 0 : SEEN_S);
    if (lower) {
      return first < 0 ? Optional.empty() : overALowerRest(first);
    }
    if (first < 0 && !never) {
      return Optional.empty();
    }
    double running =
        never ? plate.getAsDouble() : Math.max(levels.compressor(), effect.drawBeside(draw));
    return load(held(least, MOST_OF_LOAD * running), never ? draw.length : first)
        .or(() -> never ? Optional.empty() : small(dry()));
  }

  /**
   * Where the heater draws less at rest while the water moves, or may.
   *
   * @param first instant at which the compressor first does something
   */
  private Optional<IdleDraw> overALowerRest(int first) {
    // Where nothing tells of the water, the pump may have been off when the draw was lower.
    Optional<IdleDraw> load =
        waterMoves.speaks()
            ? Optional.empty()
            : load(
                held(levels.threshold(), MOST_OF_LOAD * levels.compressor())
                    .filter(this::leadsToAStart),
                first);
    Stream<Stretch> none =
        held(levels.threshold(), MOST_OF_FAN * levels.compressor())
            .filter(one -> !isTurnedRound(one));
    return load.or(() -> small(Stream.concat(none, dry())));
  }

  private Optional<IdleDraw> load(Stream<Stretch> held, int until) {
    return held.filter(one -> one.from() < until || one.length() >= timeline.instants(NO_DEFROST_S))
        .filter(one -> !HotDischarge.isIn(timeline, one))
        .map(this::heldLevels)
        .reduce(IdleDrawSearch::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.of(found.getMin()), found.getMax()));
  }

  /** Whether the water is chilled meanwhile, from one run of the compressor into the next. */
  private boolean isTurnedRound(Stretch one) {
    int before = Math.max(0, one.from() - timeline.instants(START_S));
    boolean ran =
        Arrays.stream(draw, before, one.from())
            .anyMatch(value -> value >= MOST_OF_FAN * levels.compressor());
    return ran && leadsToAStart(one) && effect.chillsBy(one.from(), one.to());
  }

  /** Whether the draw of a running compressor comes on top of a level. */
  private boolean leadsToAStart(Stretch held) {
    int to = Math.min(draw.length, held.to() + timeline.instants(START_S));
    for (int i = held.to(); i < to; i++) {
      if (draw[i] >= MOST_OF_LOAD * levels.compressor()) {
        return true;
      }
    }
    return false;
  }

  /** The most that is held over stretches of a draw as small as a fan's. */
  private Optional<IdleDraw> small(Stream<Stretch> stretches) {
    return stretches
        .filter(one -> one.length() >= timeline.instants(FAN_SEEN_S))
        .map(this::heldLevels)
        .reduce(IdleDrawSearch::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.empty(), found.getMax()));
  }

  /** Stretches of a draw as small as a fan's by which the water stands, and the pressures stay. */
  private Stream<Stretch> dry() {
    double to = MOST_OF_FAN * levels.compressor();
    return Stretch.where(
            draw.length, i -> draw[i] >= levels.threshold() && draw[i] < to && waterMoves.no(i))
        .stream()
        .filter(one -> !effect.partsPressures(one.from(), one.to()));
  }

  /** Stretches of a draw between two levels of which nothing comes. */
  private Stream<Stretch> held(double from, double to) {
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
  private boolean restsLower(double threshold, double unknownS) {
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
  private DoubleSummaryStatistics heldLevels(Stretch stretch) {
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
