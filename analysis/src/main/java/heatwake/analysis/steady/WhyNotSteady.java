package heatwake.analysis.steady;

import heatwake.analysis.phase.Cycle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Why a run has no steady figures, and what would give some. A shorter span with a wider
 * uncertainty would not do: in its first minutes a heater is still filling its condenser and
 * cooling its coil, always to the same side, so that heat against the nameplate would come out too
 * low every time.
 */
public final class WhyNotSteady {
  /** Four minutes at most until a heater has settled, and a window of six; rounded up. */
  private static final double NEEDED_S = 660;

  /** A stop so close to the end of the run may only be the end of the readings. */
  private static final long JUST_NOW_MS = 60_000;

  private WhyNotSteady() {}

  /**
   * One sentence, if there are no spans although the compressor ran.
   *
   * @param endMs last moment of the run so far
   */
  public static Optional<String> inWords(
      List<SteadyFinder.Span> spans, List<Cycle> cycles, long endMs) {
    if (!spans.isEmpty() || cycles.isEmpty()) {
      return Optional.empty();
    }
    double longestS =
        cycles.stream()
            .mapToDouble(one -> (one.stopMs().orElse(endMs) - one.startMs()) / 1e3)
            .max()
            .orElse(0);
    if (longestS >= NEEDED_S) {
      return Optional.of(
          "steady figures: none, heat, power, entering water and air never kept still for six"
              + " minutes, nor on average for half an hour; leave bypass, pump speed and set"
              + " temperature alone for an hour while the heater runs");
    }
    String why =
        String.format(
            Locale.ROOT,
            "steady figures: none, %s and some %.0f min of one run are needed",
            ran(cycles, longestS),
            NEEDED_S / 60);
    boolean stillRuns =
        cycles.size() == 1 && cycles.get(0).stopMs().orElse(endMs) > endMs - JUST_NOW_MS;
    return Optional.of(
        stillRuns ? why : why + "; raise the set temperature by a degree so that it runs on");
  }

  private static String ran(List<Cycle> cycles, double longestS) {
    return cycles.size() == 1
        ? String.format(Locale.ROOT, "the compressor ran for %.0f min", longestS / 60)
        : String.format(
            Locale.ROOT,
            "the longest of %d compressor runs lasted %.0f min",
            cycles.size(),
            longestS / 60);
  }
}
