package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
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

  /** A slow compressor shows what it does within this time (ours). */
  private static final double FAN_SEEN_S = 240;

  /** Pipes at the heater hold what moves after so long (some litres, probes' lag: ours). */
  private static final double FLUSHED_S = 120;

  /** So much of the full effect is one (ours). */
  private static final double EFFECT = 0.5;

  private final Timeline timeline;
  private final double[] draw;
  private final DrawLevels levels;
  private final Track waterMoves;
  private final CompressorEffect effect;
  private final IdleStretches stretches;

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
    this.stretches = new IdleStretches(timeline, draw, levels, waterMoves, effect);
  }

  /**
   * What there is of it.
   *
   * @param plate greatest draw by the nameplate, if stated: where nothing ever comes of any draw,
   *     only that tells what a running heater would draw
   */
  Optional<IdleDraw> found(OptionalDouble plate) {
    int first = effect.firstAbove(EFFECT, waterMoves, timeline.instants(FLUSHED_S));
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
    return load(stretches.asOfALoad(least, running), never ? draw.length : first)
        .or(() -> never ? Optional.empty() : small(stretches.dry()));
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
                stretches
                    .asOfALoad(levels.threshold(), levels.compressor())
                    .filter(stretches::leadsToAStart),
                first);
    Stream<Stretch> none = stretches.asOfAFan().filter(one -> !stretches.isTurnedRound(one));
    return load.or(() -> small(Stream.concat(none, stretches.dry())));
  }

  private Optional<IdleDraw> load(Stream<Stretch> held, int until) {
    return held.filter(one -> one.from() < until || one.length() >= timeline.instants(NO_DEFROST_S))
        .filter(one -> !HotDischarge.isIn(timeline, one))
        .map(this::heldLevels)
        .reduce(IdleDrawSearch::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.of(found.getMin()), found.getMax()));
  }

  /** The most that is held over stretches of a draw as small as a fan's. */
  private Optional<IdleDraw> small(Stream<Stretch> all) {
    return all.filter(one -> one.length() >= timeline.instants(FAN_SEEN_S))
        .map(this::heldLevels)
        .reduce(IdleDrawSearch::together)
        .filter(found -> found.getCount() > 0)
        .map(found -> new IdleDraw(Optional.empty(), found.getMax()));
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
