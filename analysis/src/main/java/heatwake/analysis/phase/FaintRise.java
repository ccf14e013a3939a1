package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;

/**
 * A rise of the water that the pair's own uncertainty may hide, but that goes with the draw: an
 * inverter at a small part of its speed warms the water by less than two probes may differ. What
 * they keep wrong alike falls out of the difference between drawing and resting.
 */
final class FaintRise {
  private FaintRise() {}

  /** Whether there is one. */
  static boolean goesWithTheDraw(Timeline timeline, WaterRise water) {
    return DrawContrast.of(timeline, water.riseK()).difference() >= WaterRise.LEAST_RISE_K;
  }

  /**
   * Whether it is so plain that it tells a compressor by itself: the water does leave warmer than
   * it enters while the heater draws (pipes that stood cold and are flushed only come back to
   * nothing); or, where no rest is heard, the whole rise is there.
   */
  static boolean isPlain(Timeline timeline, WaterRise water) {
    DrawContrast contrast = DrawContrast.of(timeline, water.riseK());
    return Double.isNaN(contrast.resting())
        ? contrast.drawing() >= CompressorEffect.LIFTED * water.fullK()
        : contrast.difference() >= WaterRise.LEAST_RISE_K
            && contrast.drawing() + water.restingK() >= WaterRise.LEAST_RISE_K;
  }
}
