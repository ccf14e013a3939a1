package heatwake.analysis.phase;

import heatwake.analysis.phase.ChilledWater.Chill;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Defrosts that chilled water shows, with the short rests in which some heaters turn the valve
 * (common practice): from the stop before to the start after, it is one defrost and no cycle.
 */
final class ReversedCycles {
  /** The compressor rests no longer to turn the valve (ours, of a common half to two minutes). */
  private static final double VALVE_REST_S = 180;

  /** A rest before shows so long before the water does (ours: the water and slow probes lag). */
  private static final double BEFORE_S = 150;

  /** And one after, so long after (ours). */
  private static final double AFTER_S = 90;

  /** Quicker signals that show less than this share of the chilled water missed the rest (ours). */
  private static final double LEAST_SHOWN = 0.5;

  private final Timeline timeline;
  private final List<Reversed> found = new ArrayList<>();

  /** One of them, with its first rest's begin and its last rest's end, beyond all where none. */
  private record Reversed(Chill chill, int restedFrom, int restedTo) {}

  private ReversedCycles(Timeline timeline) {
    this.timeline = timeline;
  }

  /**
   * Finds them, and lets the compressor run on through their rests.
   *
   * @param draw whether the compressor draws, where that is measured: the water is chilled by a
   *     running one only
   */
  static ReversedCycles join(
      Timeline timeline, Track compressor, Optional<Track> draw, List<Chill> chills) {
    ReversedCycles cycles = new ReversedCycles(timeline);
    for (Chill chill : chills) {
      if (draw.isEmpty() || drivesMostOf(draw.get(), chill.cold())) {
        cycles.found.add(cycles.joined(chill, compressor, draw));
      }
    }
    return cycles;
  }

  private static boolean drivesMostOf(Track draw, Stretch cold) {
    int rests = 0;
    for (int i = cold.from(); i < cold.to(); i++) {
      rests += draw.no(i) ? 1 : 0;
    }
    return 2 * rests < cold.length();
  }

  private Reversed joined(Chill chill, Track compressor, Optional<Track> draw) {
    Stretch cold = chill.cold();
    int from = Integer.MAX_VALUE;
    int to = 0;
    int i = Math.max(0, cold.from() - timeline.instants(BEFORE_S));
    while (i > 0 && !compressor.yes(i) && !compressor.yes(i - 1)) {
      i--;
    }
    int until = Math.min(compressor.size(), cold.to() + timeline.instants(AFTER_S));
    while (i < until) {
      int end = i;
      while (end < compressor.size() && !compressor.yes(end)) {
        end++;
      }
      // Effects alone do not tell a reversed cycle from a rest.
      boolean unseen = draw.isEmpty() && i < cold.to() && end > cold.from();
      boolean cutOff = unseen && end == compressor.size();
      if (cutOff) {
        // What follows the chilled water is not known.
        end = cold.to();
      }
      boolean between = i > 0 && end > i && (cutOff || end < compressor.size());
      if (between && (end - i <= timeline.instants(VALVE_REST_S) || unseen)) {
        compressor.fill(i, end, Track.YES);
        from = Math.min(from, i);
        to = Math.max(to, end);
      }
      i = end + 1;
    }
    return new Reversed(chill, from, to);
  }

  /**
   * Marks them, from and to where the quicker signals already showed most of them; but no rest,
   * which a start against cold metal may follow.
   */
  void mark(Phase[] phase, Track compressor) {
    for (Reversed one : found) {
      Stretch cold = one.chill().cold();
      int from = cold.to();
      int to = cold.from();
      for (int i = Math.max(0, cold.from() - timeline.instants(BEFORE_S)); i < cold.to(); i++) {
        if (phase[i] == Phase.DEFROST) {
          from = Math.min(from, i);
          to = i + 1;
        }
      }
      if (to - from < LEAST_SHOWN * cold.length()) {
        from = Math.min(from, one.chill().left());
        to = Math.max(to, one.chill().back());
      }
      from = Math.min(from, one.restedFrom());
      to = Math.max(to, one.restedTo());
      for (int i = from; i < to; i++) {
        phase[i] = compressor.no(i) ? phase[i] : Phase.DEFROST;
      }
    }
  }
}
