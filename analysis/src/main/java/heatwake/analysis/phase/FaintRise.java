package heatwake.analysis.phase;

import heatwake.analysis.timeline.Timeline;

/**
 * A rise of the water that the pair's own uncertainty may hide, but that goes with the draw: an
 * inverter at a small part of its speed warms the water by less than two probes may differ. What
 * they keep wrong alike falls out of the difference between drawing and resting.
 */
final class FaintRise {
  private FaintRise() {}

  /**
   * Whether there is one; where no rest is heard, whether the whole rise is there while it draws.
   */
  static boolean goesWithTheDraw(Timeline timeline, WaterRise water) {
    DrawContrast contrast = DrawContrast.of(timeline, water.riseK());
    return Double.isNaN(contrast.resting())
        ? contrast.drawing() >= CompressorEffect.LIFTED * water.fullK()
        : contrast.difference() >= WaterRise.LEAST_RISE_K;
  }
}
