package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * An outlet that stands many times longer than it ever did while the entering water goes on. The
 * leaving water is the entering water and the rise: both would have to move against each other
 * within a digit, and the noise that tips the reading at other times would have to cease.
 */
final class FarLonger {
  /** So many times the longest other standstill; ours: a calm night is a few times calmer. */
  private static final int TIMES = 10;

  /** Readings at other times that are needed to know how long it stands; ours. */
  private static final int ENOUGH = 300;

  /** It must be more than this part of what was read at other times; ours. */
  private static final double PART_OF_OTHERS = 0.2;

  /** Share of the readings at other times that change; ours. */
  private static final double CHANGES = 0.1;

  /** Share of the changes that turn back: jitter turns, a drift does not; ours. */
  private static final double TURNS = 0.3;

  /** The other pipe must have gone this far, K; ours, well beyond noise over five minutes. */
  private static final double GONE_ON_K = 0.3;

  /** And this many digits of the one that stands, so that a coarse reading may; ours. */
  private static final double DIGITS = 3;

  static final String LIMITS =
      "or water-out stood ten times longer than ever else in at least 300 readings of which a tenth"
          + " changed and a third of those turned back, and for a fifth of so many, while water-in went"
          + " on by more than 0.3 K and three digits in moving water; "
          + StopUnseen.LIMITS;

  private FarLonger() {}

  /** What tells so, if it does. */
  static Optional<String> words(Evidence evidence, PhaseGrid phases, Track moves, Frozen frozen) {
    Channel channel = frozen.series().channel();
    if (channel != Channel.WATER_OUT) {
      return Optional.empty();
    }
    Series series = frozen.series();
    int others = series.size() - frozen.readings();
    Others seen = Others.of(frozen);
    int longest = seen.longest();
    Channel other = Channel.WATER_IN;
    Timeline timeline = evidence.timeline();
    if (others < ENOUGH
        || frozen.readings() < PART_OF_OTHERS * others
        || frozen.readings() < TIMES * longest
        || !seen.jitters()
        || !timeline.has(other)
        || Slip.isSeen(evidence, other, frozen.fromMs(), frozen.toMs())) {
      return Optional.empty();
    }
    // A compressor that runs has water.
    double wentOnK =
        PoolWaterPair.rangeK(
            timeline,
            i -> moves.yes(i) || (phases.compressorRuns(i) && !moves.no(i)),
            other,
            frozen);
    Optional<String> wentOn =
        wentOnK > Math.max(GONE_ON_K, DIGITS * frozen.digitK())
            ? Optional.of(other.id() + " went on by " + Wording.kelvin(wentOnK) + " meanwhile")
            : Optional.empty();
    return wentOn
        .or(() -> StopUnseen.words(evidence, phases, frozen))
        .map(
            what ->
                "it never stood for more than "
                    + longest
                    + " readings at other times, and "
                    + what);
  }

  /** What was read at other times. */
  private record Others(int readings, int changes, int turns, int longest) {
    static Others of(Frozen frozen) {
      Series series = frozen.series();
      int changes = 0;
      int turns = 0;
      int longest = 0;
      int row = 1;
      double before = 0;
      for (int r = 1; r < series.size(); r++) {
        double change = series.value(r) - series.value(r - 1);
        boolean within = r >= frozen.from() && r < frozen.to();
        row = !within && change == 0 ? row + 1 : 1;
        longest = Math.max(longest, row);
        if (change != 0) {
          changes++;
          turns += change * before < 0 ? 1 : 0;
          before = change;
        }
      }
      return new Others(series.size() - frozen.readings(), changes, turns, longest);
    }

    boolean jitters() {
      return changes >= CHANGES * readings && turns >= TURNS * changes;
    }
  }
}
