package heatwake.analysis.rule.measurement;

import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A pipe probe that goes to the air within minutes while the heater rests and the other pipe keeps
 * its temperature for an hour. A pipe full of water needs about an hour for most of the way to the
 * air (some 8 kJ/(m K) lose about 2 W/(m K)), and the other would take it too if its water stood.
 *
 * @param accused water-in or water-out
 * @param startMs from when it cannot be believed, UTC milliseconds
 * @param fromK what it read on its pipe
 * @param toK what it read an hour later
 * @param airK the air meanwhile
 * @param partnerMovedK by how much the other moved
 */
record SlipAtRest(
    Channel accused, long startMs, double fromK, double toK, double airK, double partnerMovedK) {
  static final String LIMITS =
      "At rest a probe has slipped that goes 70 % of the way to air 5 K or more away within 20 min"
          + " and stays there for an hour, while the other moves by less than a tenth of its own"
          + " distance to the air: a pipe full of water takes about an hour (ours).";

  private static final double BLOCK_S = 300;

  /** Blocks in which it goes, and in which it then stays. */
  private static final int GOES = 4;

  private static final int STAYS = 12;
  private static final double WAY = 0.7;
  private static final double AIR_AWAY_K = 5;
  private static final double PARTNER_KEEPS = 0.1;

  /** The first one of a run. */
  static Optional<SlipAtRest> in(Evidence evidence, Channel accused) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    Track moves = WaterMovement.of(timeline);
    Channel partner = PipePair.partnerOf(accused);
    double limitK = Slip.limitK(evidence.recording().rig());
    int length = Math.max(1, timeline.instants(BLOCK_S));
    for (Stretch rest :
        Stretch.where(phases.size(), i -> !phases.compressorRuns(i) && !moves.no(i))) {
      List<Block> blocks = new ArrayList<>();
      // Clips and pipes follow a stop for some minutes.
      for (int i = rest.from() + length; i + length <= rest.to(); i += length) {
        blocks.add(Block.of(timeline, accused, partner, new Stretch(i, i + length)));
      }
      for (int k = 0; k + GOES + STAYS <= blocks.size(); k++) {
        Block before = blocks.get(k);
        List<Block> after = blocks.subList(k + GOES, k + GOES + STAYS);
        if (before.isOnPipe(limitK)
            && after.stream().allMatch(now -> before.slipsTo(now, limitK))) {
          Block last = after.get(STAYS - 1);
          return Optional.of(
              new SlipAtRest(
                  accused,
                  timeline.timeMs(before.at().to() - 1),
                  before.readsK(),
                  last.readsK(),
                  last.airK(),
                  last.partnerK() - before.partnerK()));
        }
      }
    }
    return Optional.empty();
  }

  /** Means over some minutes. */
  private record Block(Stretch at, double readsK, double partnerK, double airK) {
    static Block of(Timeline timeline, Channel accused, Channel partner, Stretch at) {
      Channel air = timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
      return new Block(
          at,
          at.mean(timeline.of(accused)),
          at.mean(timeline.of(partner)),
          at.mean(timeline.of(air)));
    }

    boolean isOnPipe(double limitK) {
      return Math.abs(readsK - partnerK) < limitK && Math.abs(airK - readsK) > AIR_AWAY_K;
    }

    boolean slipsTo(Block now, double limitK) {
      double wayK = airK - readsK;
      double goesK = now.readsK - readsK;
      double partnerGoesK = Math.abs(now.partnerK - partnerK);
      return Math.abs(goesK) > limitK
          && goesK / wayK > WAY
          && partnerGoesK < PARTNER_KEEPS * Math.abs(now.airK - partnerK);
    }
  }

  /** What was seen, in words. */
  String words() {
    Channel partner = PipePair.partnerOf(accused);
    return accused.id()
        + " went from "
        + Wording.celsius(fromK)
        + " to "
        + Wording.celsius(toK)
        + ", towards the air at "
        + Wording.celsius(airK)
        + ", within 20 min at rest, while "
        + partner.id()
        + " moved by "
        + Wording.kelvin(partnerMovedK)
        + " in over an hour; no pipe full of water cools so";
  }
}
