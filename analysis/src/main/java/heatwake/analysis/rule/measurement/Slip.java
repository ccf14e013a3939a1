package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Optional;

/**
 * A pipe probe that drifts to air temperature, which the other pipe, the pool and the machine do
 * not share.
 *
 * @param accused water-in or water-out
 * @param before what was seen before
 * @param after from the last block before the drift on
 */
record Slip(Channel accused, PipeBlock before, List<PipeBlock> after) {
  /** A drift smaller than this is not judged, K; ours. */
  private static final double LEAST_K = 1;

  /** Nor one under this many standard uncertainties of the pair; ours. */
  static final double FACTOR = 5;

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

  /** A drift smaller than this is not judged, K: what the pair leaves open, and 1 K. */
  static double limitK(Rig rig) {
    return Math.max(
        LEAST_K, FACTOR * ProbeUncertainty.ofDifference(rig, Channel.WATER_IN, Channel.WATER_OUT));
  }

  /** Whether a pipe probe drifts away within some time. */
  static boolean isSeen(Evidence evidence, Channel accused, long fromMs, long toMs) {
    double limitK = limitK(evidence.recording().rig());
    return PipeBlock.regimes(evidence).stream()
        .flatMap(regime -> in(regime, accused, limitK).stream())
        .anyMatch(slip -> slip.startMs() < toMs && slip.endMs() > fromMs);
  }

  /** When it begins, UTC milliseconds. */
  long startMs() {
    return after.get(0).endMs();
  }

  /** When it was last seen, UTC milliseconds. */
  long endMs() {
    return after.get(after.size() - 1).endMs();
  }

  /**
   * Where a probe drifts away over the blocks of one way of running.
   *
   * @param limitK least drift, {@link #limitK}
   */
  static Optional<Slip> in(List<PipeBlock> regime, Channel accused, double limitK) {
    if (regime.size() < 2 * BLOCKS) {
      return Optional.empty();
    }
    return since(regime, accused, limitK, regime.size())
        .or(() -> since(regime, accused, limitK, HOUR));
  }

  /** The drift against the blocks that lie so many before, or the first ones. */
  private static Optional<Slip> since(
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
        return Optional.of(new Slip(accused, before, regime.subList(begins, regime.size())));
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
}
