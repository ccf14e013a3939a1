package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Series;
import java.util.Optional;

/** How lively a channel and its neighbours are at other times and meanwhile. */
final class Liveliness {
  /** Readings at other times in the same state that are needed to know the jitter; ours. */
  private static final int ENOUGH = 60;

  /** Share of readings that differ from the one before; ours. */
  private static final double NEARLY_ALWAYS = 0.7;

  /** The same of a reading that was seen to jitter at several levels; ours. */
  private static final double OFTEN = 0.3;

  /** So many readings in a row show a level; ours. */
  private static final int LEVEL_READINGS = 30;

  /** So many levels must have been seen; ours. */
  private static final int LEVELS = 5;

  /** So many digits apart, which is every place between two digits twice; ours. */
  private static final double LEVELS_APART = 2;

  /** Share of changes that turn back: jitter turns, a drift does not; ours. */
  private static final double TURNS = 0.3;

  /**
   * Changes of this many digits on the average: a jitter of normal distribution that changes the
   * reading so often has 0.9 digits of standard deviation, and its changes measure 1.45 (by trial);
   * one that only tips to and fro between two digits may come to rest on one.
   */
  private static final double DIGITS = 1.4;

  /** Chance that so many readings are equal, under which it was not chance; ours. */
  private static final double NO_CHANCE = 1e-6;

  /** A draw or flow under this share of its highest is the zero of a thing switched off; ours. */
  private static final double ZERO_SHARE = 0.05;

  private final Evidence evidence;
  private final PhaseGrid phases;
  private final Track moves;

  Liveliness(Evidence evidence, PhaseGrid phases, Track moves) {
    this.evidence = evidence;
    this.phases = phases;
    this.moves = moves;
  }

  /** Whether another measured channel moves during most of the time. */
  boolean othersMove(Frozen frozen) {
    for (Series series : evidence.recording().series().values()) {
      if (series.channel() == frozen.series().channel()
          || series.channel().quantity() == Quantity.STATE) {
        continue;
      }
      int from = series.firstAtOrAfter(frozen.fromMs());
      int to = series.firstAtOrAfter(frozen.toMs());
      int changes = 0;
      for (int r = from + 1; r < to; r++) {
        if (series.value(r) != series.value(r - 1)) {
          changes++;
        }
      }
      if (changes > 10) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether the channel jitters at every other time in the same state, by more than a digit or at
   * levels digits apart, so that its standing still is no chance even if it jittered as little as
   * it ever does.
   */
  boolean jittersOtherwise(Frozen frozen) {
    Series series = frozen.series();
    if (isSwitchedOff(frozen)) {
      return false;
    }
    int state = stateAt((frozen.fromMs() + frozen.toMs()) / 2);
    double before = Double.NaN;
    int readings = 0;
    int changes = 0;
    int turns = 0;
    double smallest = frozen.series().smallestStep();
    double sum = 0;
    EqualReadings equal = new EqualReadings(ENOUGH);
    CalmLevels levels = new CalmLevels(LEVEL_READINGS, smallest);
    for (int r = 1; r < series.size(); r++) {
      boolean within = r >= frozen.from() && r <= frozen.to();
      if (within || stateAt(series.timeMs(r)) != state) {
        before = Double.NaN;
        levels.breakOff();
        continue;
      }
      double change = series.value(r) - series.value(r - 1);
      readings++;
      equal.take(change == 0);
      levels.take(series.value(r));
      if (change != 0) {
        changes++;
        turns += change * before < 0 ? 1 : 0;
        sum += Math.abs(change);
        before = change;
      }
    }
    boolean byMoreThanADigit =
        changes >= NEARLY_ALWAYS * readings && sum / changes >= DIGITS * smallest;
    boolean atEveryLevel =
        changes >= OFTEN * readings && levels.rangeInDigits(LEVELS) >= LEVELS_APART;
    return readings >= ENOUGH
        && turns >= TURNS * changes
        && (byMoreThanADigit || atEveryLevel)
        && readings * Math.pow(equal.greatest(), frozen.readings() - 1) < NO_CHANCE;
  }

  /** How far the other probe in the same water went on meanwhile, K, if it did. */
  Optional<Double> wentOnK(Frozen frozen) {
    return PoolWaterPair.wentOnK(evidence.timeline(), moves, frozen);
  }

  private boolean isSwitchedOff(Frozen frozen) {
    Series series = frozen.series();
    return switch (series.channel().quantity()) {
      case POWER, CURRENT, FLOW, SPEED -> {
        double highest = 0;
        for (int r = 0; r < series.size(); r++) {
          highest = Math.max(highest, series.value(r));
        }
        yield frozen.value() <= ZERO_SHARE * highest;
      }
      default -> false;
    };
  }

  private int stateAt(long timeMs) {
    int i = evidence.timeline().indexAt(timeMs);
    return (phases.compressorRuns(i) ? 10 : 0) + moves.at(i);
  }
}
