package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Median;

/** Finds clips that were off their pipe for a minute or a few under a heater that runs on. */
final class ReclipFinder {
  /** From leaving its level until it is back there, s; ours: what lasts longer is OffPipe's. */
  private static final double LONGEST_S = 240;

  private static final double SHORTEST_S = 20;
  private static final int READINGS = 3;

  /** Its level is the middle value of so long about; ours, many times as long. */
  private static final double ABOUT_S = 1200;

  /** The other probe and the witnesses keep their level from so long before to after, s; ours. */
  private static final double BESIDE_S = 60;

  /** A clip's own lag at both ends, s; ours. */
  private static final double LAGS_S = 30;

  /** It is off its level while more than this share of the limit is left; ours. */
  private static final double LEFT_SHARE = 0.5;

  /** The other probe moves by less than this share of it; ours. */
  private static final double PARTNER_SHARE = 0.25;

  private final Timeline timeline;
  private final double limitK;
  private final ReclipWitness witness;
  private final boolean[] runs;

  private ReclipFinder(Evidence evidence) {
    timeline = evidence.timeline();
    limitK = Slip.limitK(evidence.recording().rig());
    witness = ReclipWitness.of(evidence, limitK);
    runs = runs(evidence);
  }

  /** Every such time, in order. */
  static List<Reclip> in(Evidence evidence) {
    if (!ReclipWitness.canBeHeard(evidence.timeline())) {
      return List.of();
    }
    ReclipFinder finder = new ReclipFinder(evidence);
    List<Reclip> found = new ArrayList<>();
    found.addAll(finder.of(Channel.WATER_IN, Channel.WATER_OUT));
    found.addAll(finder.of(Channel.WATER_OUT, Channel.WATER_IN));
    found.sort(Comparator.comparingLong(Reclip::startMs));
    return found;
  }

  /** The compressor runs, a seeming defrost included: that one is to be denied. */
  private static boolean[] runs(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    return SettledRunning.in(timeline, i -> phases.compressorRuns(i) && !moves.no(i));
  }

  private List<Reclip> of(Channel accused, Channel partner) {
    double[] values = timeline.of(accused);
    double[] level = levels(values);
    IntPredicate isOff = i -> runs[i] && Math.abs(values[i] - level[i]) > limitK;
    int least =
        Math.max(timeline.instants(SHORTEST_S), READINGS * timeline.intervalInstants(accused));
    List<Reclip> found = new ArrayList<>();
    for (Stretch core :
        Stretch.bridged(runs.length, isOff, timeline.instants(LAGS_S), i -> !runs[i])) {
      if (core.length() >= least && core.durationS(timeline) <= LONGEST_S) {
        judged(accused, partner, core).ifPresent(found::add);
      }
    }
    return found;
  }

  /** The middle value about each instant, in steps of half that time; NaN while nothing runs. */
  private double[] levels(double[] values) {
    double[] levels = Timeline.unknown(values.length);
    int half = timeline.instants(ABOUT_S / 2);
    for (int from = 0; from < values.length; from += half) {
      int to = Math.min(values.length, from + half);
      double[] about =
          IntStream.range(Math.max(0, from - half / 2), Math.min(values.length, to + half / 2))
              .filter(i -> runs[i] && !Double.isNaN(values[i]))
              .mapToDouble(i -> values[i])
              .toArray();
      if (about.length > 0) {
        Arrays.fill(levels, from, to, Median.withDefaults().evaluate(about));
      }
    }
    return levels;
  }

  private Optional<Reclip> judged(Channel accused, Channel partner, Stretch core) {
    double[] values = timeline.of(accused);
    int lags = timeline.instants(LAGS_S);
    int beside = timeline.instants(BESIDE_S);
    double away = Median.withDefaults().withCopy(true).evaluate(known(values, core));
    // The level just before and just after, each clear of the clip's lag.
    double before = Stretch.mean(values, core.from() - lags - 2 * beside, core.from() - lags);
    Stretch off = off(values, core, before, LEFT_SHARE * limitK);
    double after = Stretch.mean(values, off.to() + lags, off.to() + lags + 2 * beside);
    double moves = away - (before + after) / 2;
    Stretch watched = new Stretch(off.from() - beside, off.to() + beside);
    boolean isBack =
        Math.abs(after - before) < LEFT_SHARE * limitK
            && Math.abs(away - before) > limitK
            && Math.abs(away - after) > limitK
            && off.durationS(timeline) <= LONGEST_S;
    if (!isBack
        || watched.from() < 0
        || watched.to() > runs.length
        || !IntStream.range(watched.from(), watched.to()).allMatch(i -> runs[i])
        || !ReclipWitness.keeps(timeline.of(partner), watched, PARTNER_SHARE * Math.abs(moves))
        || !witness.nothingElseMoves(core, watched)
        || (accused == Channel.WATER_OUT && !witness.isNoWater(core, watched, moves))) {
      return Optional.empty();
    }
    Stretch tail = off(values, off, after, limitK / Slip.FACTOR);
    int to = Math.min(tail.to(), off.to() + timeline.instants(LONGEST_S));
    return Optional.of(
        new Reclip(
            accused,
            timeline.timeMs(Math.max(0, off.from() - lags)),
            timeline.timeMs(Math.min(runs.length - 1, to + lags)),
            before,
            away,
            watched.mean(timeline.of(partner))));
  }

  /** The same time from where the clip leaves a level until it is back within so much of it. */
  private static Stretch off(double[] values, Stretch core, double levelK, double withinK) {
    int from = core.from();
    while (from > 0 && Math.abs(values[from - 1] - levelK) > withinK) {
      from--;
    }
    int to = core.to();
    while (to < values.length && Math.abs(values[to] - levelK) > withinK) {
      to++;
    }
    return new Stretch(from, to);
  }

  private static double[] known(double[] values, Stretch stretch) {
    return IntStream.range(stretch.from(), stretch.to())
        .mapToDouble(i -> values[i])
        .filter(value -> !Double.isNaN(value))
        .toArray();
  }
}
