package heatwake.analysis.rule.airflow;

import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Optional;

/**
 * Ice that a defrost leaves behind: the best heat after a start falls from start to start.
 *
 * @param starts stretches of running over a coil that ices, in order
 * @param loss part of the first one's best heat that the last one has lost, the air's share taken
 *     off
 */
record FallingPeaks(List<IcingStretch> starts, double loss) {
  /** Loss of the best heat from one start to the last; ours. */
  private static final double LEAST_LOSS = 0.2;

  /** Then the coil also evaporates this much further below the air at its best, K; ours. */
  private static final double FALLS_AWAY_K = 2;

  private static final int FEWEST_STARTS = 3;

  /** Looks over all such stretches of a run; empty where their best does not fall. */
  static Optional<FallingPeaks> of(List<IcingStretch> icy) {
    if (icy.size() < FEWEST_STARTS) {
      return Optional.empty();
    }
    IcingStretch first = icy.get(0);
    IcingStretch last = icy.get(icy.size() - 1);
    int falls = 0;
    for (int i = 1; i < icy.size(); i++) {
      falls += icy.get(i).peak() < icy.get(i - 1).peak() ? 1 : -1;
    }
    double loss =
        1 - last.peak() / first.peak() - IcingStretch.HEAT_PER_AIR_K * (first.airK() - last.airK());
    boolean fallsAway = last.peakApproachK() - first.peakApproachK() > FALLS_AWAY_K;
    return loss < LEAST_LOSS || falls < icy.size() / 2 || !fallsAway
        ? Optional.empty()
        : Optional.of(new FallingPeaks(icy, loss));
  }

  /** What was seen, with numbers and units. */
  String words() {
    return "The best heat after a start fell by "
        + Wording.percent(loss)
        + " over "
        + starts.size()
        + " starts, evaporating at "
        + Wording.celsius(starts.get(starts.size() - 1).evaporatingK());
  }
}
