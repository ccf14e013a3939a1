package heatwake.analysis.phase;

import heatwake.analysis.electric.CountedPower;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;

/**
 * What a kWh meter says of the compressor. Its register moves by steps, so the moment of a change
 * stays open by a step over the change of power, and a short run or rest may not show at all.
 * Within what the register leaves open an effect of the compressor (lift, rise) decides; beyond it
 * the register overrules the effect.
 */
final class CountedDraw {
  /** A start that does not last this long has failed; see {@link DrawReader}. */
  private static final double STALLED_S = 20;

  private final Timeline timeline;
  private final CountedPower counted;
  private final double thresholdW;
  private final Track compressor;

  private CountedDraw(
      Timeline timeline, CountedPower counted, double thresholdW, Track compressor) {
    this.timeline = timeline;
    this.counted = counted;
    this.thresholdW = thresholdW;
    this.compressor = compressor;
  }

  /**
   * @param effect where a running compressor's effect shows; unknown where nothing tells
   */
  static CountedDraw of(
      Timeline timeline,
      Heater heater,
      CountedPower counted,
      CompressorEffect strength,
      Track effect) {
    double[] power = counted.powerW();
    LevelHistogram all = LevelHistogram.of(power);
    int held = (int) Math.max(1, Math.max(60_000 / timeline.stepMs(), all.total() / 500));
    double threshold =
        DrawLevels.of(all, held, heater.greatestRatedW(), DrawMeter.LEAST_COMPRESSOR_W, strength)
            .checked(power, strength, heater.greatestRatedW(), Double.POSITIVE_INFINITY)
            .threshold();
    Track above =
        Track.above(power, 1.1 * threshold, 0.9 * threshold)
            .withoutBlips(Track.YES, timeline.instants(STALLED_S));
    Track shown = effect.copy();
    Track placed = new CountedEdges(timeline, counted, above).placed(shown);
    return new CountedDraw(timeline, counted, threshold, placed).settledBy(shown);
  }

  Track compressor() {
    return compressor;
  }

  /** Lets an effect decide where the register does not. */
  private CountedDraw settledBy(Track effect) {
    Track settled = compressor.copy();
    for (int i = 0; i < compressor.size(); ) {
      int end = i + 1;
      while (end < compressor.size()
          && compressor.at(end) == compressor.at(i)
          && effect.at(end) == effect.at(i)) {
        end++;
      }
      boolean differ = effect.known(i) && compressor.at(i) != effect.at(i);
      if (differ && leavesOpen(effect.at(i), i, end)) {
        settled.fill(i, end, effect.at(i));
      } else if (!effect.known(i) && !isWithinRun(effect, i, end) && leavesOpen(Track.NO, i, end)) {
        settled.fill(i, end, compressor.known(i) ? Track.NO : Track.UNKNOWN);
      }
      i = end;
    }
    return new CountedDraw(timeline, counted, thresholdW, settled);
  }

  /**
   * Whether the compressor's effect shows on both sides of a stretch in which nothing tells of it.
   * A run that neither the register proves nor an effect shows is none: heaters stop with the
   * water.
   */
  private boolean isWithinRun(Track effect, int from, int to) {
    return compressor.yes(from)
        && from > 0
        && effect.yes(from - 1)
        && to < effect.size()
        && effect.yes(to);
  }

  /** Whether the register permits an answer over a stretch. */
  private boolean leavesOpen(byte answer, int from, int to) {
    double atThresholdJ = thresholdW * (to - from) * timeline.stepS();
    return answer == Track.YES
        ? counted.mostJ(from, to) >= atThresholdJ
        : counted.leastJ(from, to) <= atThresholdJ;
  }

  /** Whether the register shows that the compressor rested over a stretch. */
  boolean showsRest(int from, int to) {
    int first = Math.max(from, counted.firstInstant());
    int last = Math.min(to, counted.lastInstant());
    return last > first && !leavesOpen(Track.YES, first, last);
  }
}
