package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A pipe probe drifts to air temperature: of the water's pipes, or of the circuit's lines. */
public final class ProbeSlipped implements Rule {
  private static final Set<Channel> PIPES = Set.of(Channel.WATER_IN, Channel.WATER_OUT);

  @Override
  public String id() {
    return "probe-slipped";
  }

  @Override
  public String summary() {
    return "A pipe probe drifts to air temperature.";
  }

  @Override
  public String needs() {
    return "water-in and water-out, with air-in or air-ambient, or for the inlet with power or"
        + " pressure-discharge; power, pressures, flow-heater and water-pool as witnesses. For temp-suction,"
        + " temp-liquid and temp-discharge air-in or air-ambient, pressure-discharge and pressure-suction or power";
  }

  @Override
  public String limits() {
    return "A drift towards air of more than 1 K and 5 standard uncertainties of the pair over 15"
        + " min, from the run's beginning or within an hour, that the other pipe does not share (25"
        + " %), with power, pressures and flow within 12 %; for the outlet of a running heater only"
        + " if the condensing temperature does not share it either (25 %) or, where that is not"
        + " known, under 20 % of the rise is left. Without an air temperature only for the inlet of"
        + " a running heater, and only if the rise changes by half (ours). Not across a time in"
        + " which one of the two stood still (see probe-stuck). "
        + OffPipe.LIMITS
        + " "
        + Reclip.LIMITS
        + " "
        + SlipAtRest.LIMITS
        + " "
        + LineSlip.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    SlippedFlag told = new SlippedFlag(id(), evidence.recording().endMs());
    Outcome ofPipes = ofPipes(evidence, told);
    List<Flag> flags = new ArrayList<>();
    if (ofPipes instanceof Outcome.Flagged flagged) {
      flags.addAll(flagged.flags());
    }
    LineSlip.in(evidence).forEach(slip -> flags.add(told.of(slip)));
    return flags.isEmpty() ? ofPipes : Outcome.of(flags);
  }

  private static Outcome ofPipes(Evidence evidence, SlippedFlag told) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.WATER_IN) || !timeline.has(Channel.WATER_OUT)) {
      return Outcome.notEnoughData("no water-in and water-out pair");
    }
    if (!timeline.has(Channel.AIR_IN)
        && !timeline.has(Channel.AIR_AMBIENT)
        && !timeline.has(Channel.POWER)
        && !timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return Outcome.notEnoughData("no air-in or air-ambient, power or pressure-discharge reading");
    }
    double limitK = Slip.limitK(evidence.recording().rig());
    List<Flag> flags = new ArrayList<>();
    ClipsOff off = ClipsOff.in(evidence);
    off.lasting().forEach(one -> flags.add(told.of(one, startMs(one, evidence, limitK))));
    off.brief().forEach(one -> flags.add(told.of(one)));
    for (List<PipeBlock> all : PipeBlock.regimes(evidence)) {
      // What a clip read in the air and after is no drift.
      List<PipeBlock> regime = off.without(all);
      for (Channel accused : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
        boolean isFlagged =
            flags.stream()
                .anyMatch(
                    flag ->
                        flag.channels().contains(accused)
                            && flag.endMs() >= evidence.recording().endMs());
        if (!isFlagged) {
          Slip.in(regime, accused, limitK)
              .flatMap(slip -> withoutStandstills(slip, evidence, regime, limitK))
              .map(told::of)
              .ifPresent(flags::add);
        }
      }
    }
    for (Channel accused : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      if (flags.stream().noneMatch(flag -> flag.channels().contains(accused))) {
        SlipAtRest.in(evidence, accused).map(slip -> told.of(accused, slip)).ifPresent(flags::add);
      }
    }
    return Outcome.of(flags);
  }

  /**
   * The slip, looked for anew where a pipe probe had stood still before: a step from there to where
   * the water has got meanwhile is the end of the standstill, not a probe that slips, and one that
   * stands is no partner to hold the other against.
   */
  private static Optional<Slip> withoutStandstills(
      Slip slip, Evidence evidence, List<PipeBlock> regime, double limitK) {
    List<Flag> standstills =
        new ProbeStuck().evaluate(evidence) instanceof Outcome.Flagged stuck
            ? stuck.flags().stream()
                .filter(one -> !Collections.disjoint(one.channels(), PIPES))
                .filter(one -> one.startMs() < slip.endMs())
                .toList()
            : List.of();
    if (standstills.isEmpty()) {
      return Optional.of(slip);
    }
    List<PipeBlock> believed =
        regime.stream()
            .filter(
                block ->
                    standstills.stream()
                        .noneMatch(
                            one -> block.startMs() < one.endMs() && block.endMs() > one.startMs()))
            .toList();
    return Slip.in(believed, slip.accused(), limitK);
  }

  /** From when: a clip that slides off for good begins to drift before its rise cannot be. */
  private static long startMs(OffPipe off, Evidence evidence, double limitK) {
    return off.isBack()
        ? off.startMs()
        : Slip.in(PipeBlock.steady(evidence), off.accused(), limitK)
            .map(slip -> Math.min(slip.startMs(), off.startMs()))
            .orElse(off.startMs());
  }
}
