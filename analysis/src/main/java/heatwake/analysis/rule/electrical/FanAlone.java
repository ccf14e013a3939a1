package heatwake.analysis.rule.electrical;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.SlidingPipes;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/** Times at which the fan runs and the compressor rests, and what comes before and after them. */
final class FanAlone {
  /** Shorter ones are no try, s; ours. */
  private static final double TRY_S = 20;

  /** After a compressor stop a fan may run on this long; common practice, s. */
  private static final double RUN_ON_S = 300;

  private final Timeline timeline;
  private final PhaseGrid phases;
  private final Track moves;
  private final Track slide;
  private final List<Stretch> spells;

  private FanAlone(Timeline timeline, PhaseGrid phases, Track moves, Track slide) {
    this.timeline = timeline;
    this.phases = phases;
    this.moves = moves;
    this.slide = slide;
    this.spells = notRunningOn();
  }

  /** Those of a run; empty where neither power nor current is read. */
  static Optional<FanAlone> in(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(timeline.preferred(Channel.POWER, Channel.CURRENT))) {
      return Optional.empty();
    }
    PhaseGrid phases = evidence.phaseGrid();
    return Optional.of(
        new FanAlone(
            timeline,
            phases,
            WaterMovement.of(timeline),
            SlidingPipes.standing(timeline, phases::compressorRuns)));
  }

  /** Such times, not running on after a stop, and not known to be without water. */
  List<Stretch> spells() {
    return spells;
  }

  private List<Stretch> notRunningOn() {
    int runOn = (int) (RUN_ON_S / timeline.stepS());
    return Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN) && !stands(i)).stream()
        .filter(spell -> spell.durationS(timeline) >= TRY_S)
        .filter(spell -> spell.length() > runOn || !followsARun(spell))
        .toList();
  }

  /** Times at which a fan seems to run alone, whatever the water does. */
  List<Stretch> withAndWithoutWater() {
    return Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN));
  }

  /** Parts of a stretch in which the water stands. */
  List<Stretch> withoutWater(Stretch one) {
    return Stretch.where(phases.size(), i -> i >= one.from() && i < one.to() && stands(i));
  }

  /** Whether the water is known to stand, or where nothing tells of it both pipes glide. */
  private boolean stands(int i) {
    return moves.no(i) || (!moves.known(i) && slide.yes(i));
  }

  /** The compressor's rest to the end of the run, with a fan or without, but not without water. */
  Optional<Stretch> lastRest() {
    List<Stretch> rests =
        Stretch.where(phases.size(), i -> !phases.compressorRuns(i) && !moves.no(i));
    return rests.isEmpty()
        ? Optional.empty()
        : Optional.of(rests.get(rests.size() - 1))
            .filter(last -> !compressorRan(last.to(), phases.size()));
  }

  boolean followsARun(Stretch spell) {
    return spell.from() > 0 && phases.compressorRuns(spell.from() - 1);
  }

  boolean endsInAStart(Stretch spell) {
    return spell.to() < phases.size() && phases.compressorRuns(spell.to());
  }

  /** Whether what follows is one more try, or a start, that the end of the run cuts off. */
  boolean isCutOffAfter(Stretch spell) {
    return phases.size() - spell.to() <= timeline.instants(TRY_S) + 1;
  }

  boolean compressorRan(int from, int to) {
    for (int i = from; i < to; i++) {
      if (phases.compressorRuns(i)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the air is so cold that a fan may thaw the coil by itself. */
  boolean mayThaw(Stretch spell) {
    for (Channel channel : List.of(Channel.AIR_IN, Channel.AIR_AMBIENT)) {
      double air = spell.mean(timeline.of(channel));
      if (!Double.isNaN(air)) {
        return air < IcingAir.FROST_BELOW_K;
      }
    }
    return false;
  }
}
