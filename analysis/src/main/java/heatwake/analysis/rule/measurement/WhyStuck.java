package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/** What shows that a reading that stands still is stuck, in words. */
final class WhyStuck {
  private final Evidence evidence;
  private final Timeline timeline;
  private final PhaseGrid phases;
  private final Track moves;
  private final List<Frozen> all;
  private final Liveliness liveliness;
  private final SleptThrough slept;

  /**
   * @param all every standstill of the run
   */
  WhyStuck(Evidence evidence, List<Frozen> all) {
    this.evidence = evidence;
    this.timeline = evidence.timeline();
    this.phases = evidence.phaseGrid();
    this.moves = WaterMovement.of(timeline);
    this.all = List.copyOf(all);
    this.liveliness = new Liveliness(evidence, phases, moves);
    this.slept = new SleptThrough(timeline, phases, moves);
  }

  /** For one of them; empty where it may be honest. */
  Optional<String> of(Frozen frozen) {
    if (frozen.isAtALimit()) {
      return HeatsOn.witnesses(timeline, phases, frozen);
    }
    return liveliness.othersMove(frozen)
        ? beside(frozen).or(() -> FarLonger.words(evidence, phases, moves, frozen))
        : Optional.empty();
  }

  private Optional<String> beside(Frozen frozen) {
    if (liveliness.jittersOtherwise(frozen)) {
      return Optional.of("it never stands still at other times");
    }
    return leftBehind(frozen)
        .or(
            () ->
                FlowGoesOn.witnesses(timeline, frozen)
                    .map(witnesses -> witnesses + " say that the water stood meanwhile"))
        .or(
            () ->
                slept
                    .followers(frozen)
                    .map(
                        followers ->
                            "the compressor switched meanwhile and " + followers + " followed"))
        .or(
            () ->
                slept
                    .inletWentOnK(frozen)
                    .map(
                        wentOnK ->
                            "it shows no start or stop of the compressor, and water-in went on by "
                                + Wording.kelvin(wentOnK)
                                + " meanwhile"));
  }

  /**
   * Another thermometer went on. A sound coarse one stands now and then while others move, so only
   * the longest standstill is held against it.
   */
  private Optional<String> leftBehind(Frozen frozen) {
    if (!frozen.isLongestAmong(all)) {
      return Optional.empty();
    }
    return liveliness
        .wentOnK(frozen)
        .map(
            wentOnK ->
                "the other probe in the same water went on by "
                    + Wording.kelvin(wentOnK)
                    + " meanwhile")
        .or(() -> PipePair.leftBehind(evidence, frozen))
        .or(
            () ->
                AirPair.wentOnK(timeline, frozen)
                    .map(
                        wentOnK ->
                            "air-ambient went on by " + Wording.kelvin(wentOnK) + " meanwhile"));
  }
}
