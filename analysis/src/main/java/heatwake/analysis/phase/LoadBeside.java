package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Another load on the heater's meter, mostly the pool pump, that draws more than the threshold for
 * the compressor. It shows where the draw holds a level for long and nothing comes of it, neither
 * lift nor heat, before the compressor is first seen to do something, or for longer than any
 * defrost; and the draw is never lower while the water moves. A fan, a hot-gas defrost and a
 * compressor that pumps no more come from a rest that draws less.
 */
final class LoadBeside {
  /** A rest is seen over so long; a compressor's lift and heat show by then (ours). */
  private static final double SEEN_S = 300;

  /** After the first heat also a defrost draws and heats nothing; it is over within this (ours). */
  private static final double NO_DEFROST_S = 1200;

  /** It keeps its level within this share (ours; a pump's draw follows the voltage). */
  private static final double FLAT = 0.1;

  /** And stays under this share of what the heater draws while it runs (ours). */
  private static final double MOST_SHARE = 0.8;

  /** So much of the full effect is one (ours). */
  private static final double EFFECT = 0.5;

  private final Timeline timeline;
  private final double[] draw;
  private final DrawLevels levels;
  private final CompressorEffect effect;

  private LoadBeside(Timeline timeline, double[] draw, DrawLevels levels, CompressorEffect effect) {
    this.timeline = timeline;
    this.draw = draw;
    this.levels = levels;
    this.effect = effect;
  }

  /**
   * The draw of the heater at rest with that load, if there is one.
   *
   * @param waterMoves whether water moves
   */
  static OptionalDouble draw(
      Timeline timeline,
      double[] draw,
      DrawLevels levels,
      Track waterMoves,
      CompressorEffect effect) {
    return new LoadBeside(timeline, draw, levels, effect).draw(waterMoves);
  }

  private OptionalDouble draw(Track waterMoves) {
    int first = effect.firstAbove(EFFECT);
    if (first < 0 || restsLower(waterMoves)) {
      return OptionalDouble.empty();
    }
    int seen = timeline.instants(SEEN_S);
    return Stretch.where(draw.length, this::isLoad).stream()
        .filter(
            one ->
                (one.length() >= seen && one.from() < first)
                    || one.length() >= timeline.instants(NO_DEFROST_S))
        .mapToDouble(this::level)
        .filter(level -> level > 0)
        .max();
  }

  /** Whether the draw falls below the threshold for long while the water moves, or may move. */
  private boolean restsLower(Track waterMoves) {
    boolean known = waterMoves.speaks();
    int seen = timeline.instants(SEEN_S);
    return Stretch.where(
            draw.length,
            i -> draw[i] < levels.threshold() && (known ? waterMoves.yes(i) : !waterMoves.no(i)))
        .stream()
        .anyMatch(rest -> rest.length() >= seen);
  }

  private boolean isLoad(int i) {
    return draw[i] >= levels.threshold()
        && draw[i] < MOST_SHARE * levels.compressor()
        && effect.isNone(i);
  }

  /** Its middle; 0 where it holds no level. */
  private double level(Stretch stretch) {
    double[] sorted = Arrays.copyOfRange(draw, stretch.from(), stretch.to());
    Arrays.sort(sorted);
    double middle = sorted[sorted.length / 2];
    // The first and last readings may lie on the way from and to the compressor's draw.
    double low = sorted[sorted.length / 10];
    double high = sorted[sorted.length - 1 - sorted.length / 10];
    return high - low <= FLAT * middle ? middle : 0;
  }
}
