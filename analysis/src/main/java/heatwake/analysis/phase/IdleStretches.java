package heatwake.analysis.phase;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.stream.Stream;

/** Stretches of a run's draw of which nothing comes, and what comes before and after them. */
final class IdleStretches {
  /** Another load stays under this share of what the heater draws while it runs (ours). */
  private static final double MOST_OF_LOAD = 0.8;

  /** And a fan alone under this one (ours, as of a fan that leads a start). */
  private static final double MOST_OF_FAN = 0.4;

  /** A start that comes on top of a load is over within this time (ours). */
  private static final double START_S = 120;

  private final Timeline timeline;
  private final double[] draw;
  private final DrawLevels levels;
  private final Track waterMoves;
  private final CompressorEffect effect;

  IdleStretches(
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
   * Those that draw as another load may.
   *
   * @param least from this draw on
   * @param running what the heater draws while it runs
   */
  Stream<Stretch> asOfALoad(double least, double running) {
    return held(least, MOST_OF_LOAD * running);
  }

  /** Those that draw as a fan alone may. */
  Stream<Stretch> asOfAFan() {
    return held(levels.threshold(), MOST_OF_FAN * levels.compressor());
  }

  private Stream<Stretch> held(double from, double to) {
    return Stretch.where(
        draw.length,
        i -> draw[i] >= from && draw[i] < to && (effect.isAbsent() || effect.isNone(i)))
        .stream();
  }

  /** Those of a draw as small as a fan's by which the water stands, and the pressures stay. */
  Stream<Stretch> dry() {
    double to = MOST_OF_FAN * levels.compressor();
    return Stretch.where(
            draw.length, i -> draw[i] >= levels.threshold() && draw[i] < to && waterMoves.no(i))
        .stream()
        .filter(one -> !effect.partsPressures(one.from(), one.to()));
  }

  /** Whether the water is chilled meanwhile, from one run of the compressor into the next. */
  boolean isTurnedRound(Stretch one) {
    int before = Math.max(0, one.from() - timeline.instants(START_S));
    boolean ran =
        Arrays.stream(draw, before, one.from())
            .anyMatch(value -> value >= MOST_OF_FAN * levels.compressor());
    return ran && leadsToAStart(one) && effect.chillsBy(one.from(), one.to());
  }

  /** Whether the draw of a running compressor comes on top of a level. */
  boolean leadsToAStart(Stretch held) {
    int to = Math.min(draw.length, held.to() + timeline.instants(START_S));
    for (int i = held.to(); i < to; i++) {
      if (draw[i] >= MOST_OF_LOAD * levels.compressor()) {
        return true;
      }
    }
    return false;
  }
}
