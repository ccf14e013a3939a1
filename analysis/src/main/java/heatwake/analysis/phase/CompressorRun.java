package heatwake.analysis.phase;

import java.util.Optional;

/**
 * Whether the compressor runs. Its electric draw is the cause and answers at once; lift and rise
 * are effects that lag. Where the draw is known it gives the edges, and is overruled only by both
 * effects together over a longer time: without a running compressor there is no lasting lift and
 * heat, whatever a meter on the wrong conductor says. Where it is not known the lift answers, then
 * the rise, but not one that was there already while the draw said that the compressor rests: two
 * pipes of standing water differ so.
 */
final class CompressorRun {
  /**
   * Effects have died away this long after a stop (common practice: run-on heat, levelling out).
   */
  private static final double EFFECTS_LAST_S = 300;

  /** A meter that says nothing is overruled by effects that last this long (ours). */
  private static final double OVERRULED_S = 600;

  private CompressorRun() {}

  static Track of(
      int size, long stepMs, Optional<Track> draw, Optional<Track> lift, Optional<WaterRise> rise) {
    Track runs = new Track(size);
    Track overruled = bothSay(size, stepMs, draw, lift, rise);
    int longest = (int) Math.ceil(EFFECTS_LAST_S * 1000 / stepMs);
    int sinceDrawStopped = longest;
    boolean belied = false;
    for (int i = 0; i < size; i++) {
      byte byDraw = draw.isPresent() ? draw.get().at(i) : Track.UNKNOWN;
      byte byLift = lift.isPresent() ? lift.get().at(i) : Track.UNKNOWN;
      byte byRise = rise.isPresent() ? rise.get().heats().at(i) : Track.UNKNOWN;
      sinceDrawStopped = byDraw == Track.YES ? 0 : sinceDrawStopped + 1;
      boolean restsLong = byDraw == Track.NO && sinceDrawStopped > longest;
      belied = byRise == Track.YES && (belied || restsLong) && byDraw != Track.YES;
      byte answer = byDraw;
      if (restsLong && overruled.yes(i)) {
        answer = Track.YES;
      } else if (byDraw == Track.UNKNOWN) {
        answer = byLift != Track.UNKNOWN ? byLift : belied ? Track.UNKNOWN : byRise;
      }
      runs.set(i, answer);
    }
    return runs;
  }

  /**
   * Where lift and rise both tell of a running compressor for a long time on end, and the draw does
   * not: that they do once it draws says nothing of the minute before, which they share by their
   * lag alone.
   */
  private static Track bothSay(
      int size, long stepMs, Optional<Track> draw, Optional<Track> lift, Optional<WaterRise> rise) {
    Track both = new Track(size);
    if (lift.isEmpty() || rise.isEmpty()) {
      return both;
    }
    Track heats = rise.get().heats();
    for (int i = 0; i < size; i++) {
      boolean draws = draw.isPresent() && draw.get().yes(i);
      both.set(i, !draws && lift.get().yes(i) && heats.yes(i) ? Track.YES : Track.NO);
    }
    return both.withoutBlips(Track.YES, (int) Math.ceil(OVERRULED_S * 1000 / stepMs));
  }
}
