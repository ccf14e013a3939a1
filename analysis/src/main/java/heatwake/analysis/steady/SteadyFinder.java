package heatwake.analysis.steady;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds steady spans by a moving-window test: a window is steady when the means of its two halves
 * differ, for every quantity looked at, by no more than a limit (or than their scatter alone would
 * make them differ). Steady windows in a row are one span; it ends where its conditions have moved
 * too far from where it began, so that its means belong to one set of conditions.
 *
 * <p>A compressor whose speed is controlled may swing all the time. Then no short window is steady,
 * but its means over half an hour are figures all the same: of the heat balance Q = Q_condenser -
 * dE/dt only the heat E held in condenser and water on its way is left, which cannot grow for long
 * ({@link HeatUnderWay}). So what lies between the steady spans is looked at again with a window of
 * half an hour, whose halves may differ by more.
 *
 * <p>That a window moves over the readings first and judges after is the way of NIST SP 1087
 * (2008); the numbers are not in what could be read of it and are ours.
 */
public final class SteadyFinder {
  /** Length of the window. */
  public static final double WINDOW_S = 360;

  /** Length of the window for what swings evenly: many swings of a controller of some minutes. */
  static final double EVEN_WINDOW_S = 1800;

  /** Means of half such a window may differ by so many times the limit of the short one. */
  private static final double EVEN_FACTOR = 2.5;

  /** Fewest readings of the slowest quantity in a window. */
  private static final int FEWEST_READINGS = 6;

  private static final double LIMIT_IN_SCATTERS = 3;

  private final Timeline timeline;
  private final List<Watched> watched;
  private final int window;
  private final double factor;

  /** A span, from index {@code from} up to but not including {@code to}. */
  public record Span(int from, int to) {}

  private SteadyFinder(Timeline timeline, List<Watched> watched, double windowS, double factor) {
    this.timeline = timeline;
    this.watched = watched;
    this.factor = factor;
    int slowest = watched.stream().mapToInt(Watched::interval).max().orElse(1);
    int least = timeline.instants(windowS);
    int length = Math.max(least, FEWEST_READINGS * slowest);
    this.window = length + length % 2;
  }

  /**
   * Steady spans in order of time. They lie within the phase of that name: what is still starting
   * may hold still for a window and yet go on to climb.
   *
   * @param phases what the heater was doing
   * @param watched quantities to look at, the heater's output first; a window without it is not
   *     steady
   */
  public static List<Span> of(Timeline timeline, List<PhaseSpan> phases, List<Watched> watched) {
    if (watched.isEmpty()) {
      return List.of();
    }
    SteadyFinder still = new SteadyFinder(timeline, watched, WINDOW_S, 1);
    SteadyFinder even = new SteadyFinder(timeline, watched, EVEN_WINDOW_S, EVEN_FACTOR);
    List<Span> found = new ArrayList<>();
    for (Span stretch : still.stretches(phases)) {
      int free = stretch.from();
      for (Span span : still.within(stretch.from(), stretch.to())) {
        found.addAll(even.within(free, span.from()));
        found.add(span);
        free = span.to();
      }
      found.addAll(even.within(free, stretch.to()));
    }
    return found;
  }

  /** Where the heater is in phase steady. */
  private List<Span> stretches(List<PhaseSpan> phases) {
    List<Span> found = new ArrayList<>();
    int from = -1;
    for (int k = 0; k <= phases.size(); k++) {
      boolean runs = k < phases.size() && phases.get(k).phase() == Phase.STEADY;
      if (runs && from < 0) {
        from = timeline.firstAtOrAfter(phases.get(k).startMs());
      } else if (!runs && from >= 0) {
        found.add(new Span(from, timeline.firstAtOrAfter(phases.get(k - 1).endMs())));
        from = -1;
      }
    }
    return found;
  }

  private List<Span> within(int from, int to) {
    List<Span> found = new ArrayList<>();
    int stride = Math.max(1, window / 24);
    int begin = -1;
    int end = -1;
    for (int i = from; i + window <= to; i += stride) {
      boolean steady = isSteady(i);
      if (begin >= 0 && (!steady || hasMoved(begin, i))) {
        found.add(new Span(begin, end));
        // The next span shares no instant with this one.
        i = Math.max(i, end - stride);
        begin = -1;
      } else if (steady) {
        begin = begin < 0 ? i : begin;
        end = i + window;
      }
    }
    if (begin >= 0) {
      found.add(new Span(begin, end));
    }
    return found;
  }

  private boolean isSteady(int from) {
    int middle = from + window / 2;
    int to = from + window;
    for (int k = 0; k < watched.size(); k++) {
      Halves halves = new Halves(watched.get(k), from, middle, to);
      // The first is the output itself; a condition that is not known at the moment does not judge.
      boolean fails = halves.areKnown() ? halves.shift() > halves.limit(factor) : k == 0;
      if (fails) {
        return false;
      }
    }
    return true;
  }

  private boolean hasMoved(int begin, int at) {
    for (Watched one : watched) {
      double first = one.means().mean(begin, begin + window);
      double now = one.means().mean(at, at + window);
      if (Math.abs(now - first) > one.driftLimit(first)) {
        return true;
      }
    }
    return false;
  }

  /** Means of the two halves of a window. */
  private record Halves(double early, double late, int known, Watched one) {
    Halves(Watched one, int from, int middle, int to) {
      this(
          one.means().mean(from, middle),
          one.means().mean(middle, to),
          Math.min(one.means().count(from, middle), one.means().count(middle, to)),
          one);
    }

    boolean areKnown() {
      return !Double.isNaN(early) && !Double.isNaN(late);
    }

    double shift() {
      return Math.abs(late - early);
    }

    double limit(double factor) {
      double readings = Math.max(1, (double) known / one.interval());
      double scatter = one.noise() * Math.sqrt(2 / readings);
      return Math.max(factor * one.shiftLimit(early), LIMIT_IN_SCATTERS * scatter);
    }
  }
}
