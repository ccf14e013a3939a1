package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A pipe probe drifts to air temperature. */
public final class ProbeSlipped implements Rule {
  /** A drift smaller than this is not judged, K; ours. */
  private static final double LEAST_K = 1;

  /** Nor one under this many standard uncertainties of the pair; ours. */
  private static final double FACTOR = 5;

  /** Air and water must differ by this much for a drift to have a direction, K; ours. */
  private static final double LEAST_AIR_K = 2;

  /** The partner follows less than this share of the drift; ours. */
  private static final double PARTNER_SHARE = 0.25;

  /** Power, pressures and flow keep their level within this share; ours. */
  private static final double SAME_DUTY = 0.12;

  /**
   * Where the high side is not known, an outlet drift of a running heater is judged only if hardly
   * any rise is left; ours.
   */
  private static final double RISE_LEFT = 0.2;

  /**
   * The condensing temperature goes with the leaving water, or at the least with the mean of both
   * pipes, by half; one that moves by less than this share of a drift denies it; ours.
   */
  private static final double CONDENSING_SHARE = 0.25;

  /**
   * Where no air temperature tells the direction, the rise must change by this share: no heater
   * gives so much more or less heat at equal power; ours.
   */
  private static final double RISE_CHANGES = 0.5;

  /** Blocks in a row that must show it (5 min each); ours. */
  private static final int BLOCKS = 3;

  /** A probe that slips at once is seen against the blocks of an hour before; ours. */
  private static final int HOUR = 12;

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
        + " pressure-discharge; power, pressures, flow-heater and water-pool as witnesses";
  }

  @Override
  public String limits() {
    return "A drift towards air of more than 1 K and 5 standard uncertainties of the pair over 15"
        + " min, from the run's beginning or within an hour, that the other pipe does not share (25"
        + " %), with power, pressures and flow within 12 %; for the outlet of a running heater only"
        + " if the condensing temperature does not share it either (25 %) or, where that is not"
        + " known, under 20 % of the rise is left. Without an air temperature only for the inlet of"
        + " a running heater, and only if the rise changes by half (ours). Not across a time in"
        + " which the probe stood still (see probe-stuck).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
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
    Rig rig = evidence.recording().rig();
    double limitK =
        Math.max(
            LEAST_K,
            FACTOR
                * Math.hypot(
                    ProbeUncertainty.of(rig, Channel.WATER_IN).absolute(),
                    ProbeUncertainty.of(rig, Channel.WATER_OUT).absolute()));
    List<Flag> flags = new ArrayList<>();
    for (List<PipeBlock> regime : PipeBlock.regimes(evidence)) {
      for (Channel accused : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
        boolean isFlagged = flags.stream().anyMatch(flag -> flag.channels().contains(accused));
        if (!isFlagged) {
          slipped(regime, accused, limitK)
              .flatMap(flag -> withoutStandstills(flag, evidence, regime, accused, limitK))
              .ifPresent(flags::add);
        }
      }
    }
    return Outcome.of(flags);
  }

  /**
   * The flag, raised anew where the probe had stood still before: a step from there to where the
   * water has got meanwhile is the end of the standstill, not a probe that slips.
   */
  private Optional<Flag> withoutStandstills(
      Flag flag, Evidence evidence, List<PipeBlock> regime, Channel accused, double limitK) {
    List<Flag> standstills =
        new ProbeStuck().evaluate(evidence) instanceof Outcome.Flagged stuck
            ? stuck.flags().stream()
                .filter(one -> one.channels().contains(accused))
                .filter(one -> one.startMs() < flag.startMs())
                .toList()
            : List.of();
    if (standstills.isEmpty()) {
      return Optional.of(flag);
    }
    List<PipeBlock> believed =
        regime.stream()
            .filter(
                block ->
                    standstills.stream()
                        .noneMatch(
                            one -> block.startMs() < one.endMs() && block.endMs() > one.startMs()))
            .toList();
    return slipped(believed, accused, limitK);
  }

  private Optional<Flag> slipped(List<PipeBlock> regime, Channel accused, double limitK) {
    if (regime.size() < 2 * BLOCKS) {
      return Optional.empty();
    }
    return since(regime, accused, limitK, regime.size())
        .or(() -> since(regime, accused, limitK, HOUR));
  }

  /** The drift against the blocks that lie so many before, or the first ones. */
  private Optional<Flag> since(
      List<PipeBlock> regime, Channel accused, double limitK, int blocksBefore) {
    int first = 0;
    PipeBlock before = PipeBlock.median(regime.subList(0, BLOCKS));
    int from = BLOCKS;
    while (from + BLOCKS <= regime.size()) {
      if (from - BLOCKS - blocksBefore > first) {
        first = from - BLOCKS - blocksBefore;
        before = PipeBlock.median(regime.subList(first, first + BLOCKS));
      }
      if (allShow(before, regime.subList(from, from + BLOCKS), accused, limitK)) {
        int begins = begins(regime, first + BLOCKS, from, before, limitK);
        return Optional.of(flag(before, regime.subList(begins, regime.size()), accused));
      }
      from++;
    }
    return Optional.empty();
  }

  /**
   * The last block before the drift grows beyond one standard uncertainty of the pair: until then
   * the rise is as good as it is stated.
   */
  private static int begins(
      List<PipeBlock> regime, int earliest, int seen, PipeBlock before, double limitK) {
    int begins = seen;
    boolean drifts = true;
    while (drifts && begins >= earliest) {
      begins--;
      double change = regime.get(begins).riseK() - before.riseK();
      drifts = Math.abs(change) > limitK / FACTOR;
    }
    return begins;
  }

  private static boolean allShow(
      PipeBlock before, List<PipeBlock> blocks, Channel accused, double limitK) {
    return blocks.stream().allMatch(now -> shows(before, now, accused, limitK));
  }

  private static boolean shows(PipeBlock before, PipeBlock now, Channel accused, double limitK) {
    boolean isInlet = accused == Channel.WATER_IN;
    double probeThen = isInlet ? before.inK() : before.outK();
    double drift = (isInlet ? now.inK() : now.outK()) - probeThen;
    double partner = isInlet ? now.outK() - before.outK() : now.inK() - before.inK();
    double towardsAir = now.airK() - probeThen;
    boolean partnerStays = Math.abs(partner) < PARTNER_SHARE * Math.abs(drift);
    double pool = now.poolK() - before.poolK();
    boolean poolStays = Double.isNaN(pool) || Math.abs(pool) < PARTNER_SHARE * Math.abs(drift);
    if (Math.abs(drift) <= limitK
        || !partnerStays
        || !poolStays
        || !before.sameDuty(now, SAME_DUTY)) {
      return false;
    }
    if (Double.isNaN(towardsAir)) {
      return isInlet && now.heats() && now.hasDuty() && riseChanges(before, now);
    }
    boolean drifts =
        Math.abs(towardsAir) > LEAST_AIR_K
            && drift * towardsAir > 0
            && Math.abs(drift) < 1.2 * Math.abs(towardsAir);
    return drifts && (isInlet || !now.heats() || isDeniedByTheMachine(before, now, limitK));
  }

  private static boolean riseChanges(PipeBlock before, PipeBlock now) {
    return Math.abs(now.riseK() - before.riseK()) > RISE_CHANGES * Math.abs(before.riseK());
  }

  /** Whether what the circuit does shows that the leaving water did not move so. */
  private static boolean isDeniedByTheMachine(PipeBlock before, PipeBlock now, double limitK) {
    double condensing = before.condensingMovesK(now);
    double drift = now.outK() - before.outK();
    if (!Double.isNaN(condensing)) {
      return Math.abs(condensing) < CONDENSING_SHARE * Math.abs(drift);
    }
    return now.hasDuty() && before.riseK() > limitK && now.riseK() < RISE_LEFT * before.riseK();
  }

  /**
   * @param after from the last block before the drift on
   */
  private Flag flag(PipeBlock before, List<PipeBlock> after, Channel accused) {
    boolean isInlet = accused == Channel.WATER_IN;
    PipeBlock last = after.get(after.size() - 1);
    Channel partner = isInlet ? Channel.WATER_OUT : Channel.WATER_IN;
    double then = isInlet ? before.inK() : before.outK();
    double now = isInlet ? last.inK() : last.outK();
    double partnerMoved = isInlet ? last.outK() - before.outK() : last.inK() - before.inK();
    return new Flag(
        id(),
        Side.MEASUREMENT,
        Severity.WARNING,
        after.get(0).endMs(),
        last.endMs(),
        accused.id()
            + " went from "
            + Wording.celsius(then)
            + " to "
            + Wording.celsius(now)
            + (Double.isNaN(last.airK())
                ? ""
                : ", towards the air at " + Wording.celsius(last.airK()) + ",")
            + " while "
            + partner.id()
            + " moved by "
            + Wording.kelvin(partnerMoved),
        List.of(
            "clip or strap came loose, or insulation fell off",
            "probe pulled out of its pocket",
            "water on the probe's cable or in its plug"),
        "Look at the "
            + accused.id()
            + " probe: press it to clean pipe, strap and insulate it, then compare again.",
        Set.of(accused));
  }
}
