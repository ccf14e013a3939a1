package heatwake.analysis.rule.airflow;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.rule.heat.PartLoad;

/**
 * Running from one start or defrost to the next stop or defrost.
 *
 * @param peak best block of output in its first half
 * @param lost what of the peak was lost at the end, the air's share taken off
 * @param airK air at the end, NaN if not known
 * @param evaporatingK evaporating temperature at the end, NaN if not known
 * @param fallsAwayK how much further below the air it evaporates at the end, NaN if not known
 * @param peakApproachK how far below the air it evaporates at the peak, NaN if not known
 * @param powerShare power at the end over that at the peak, NaN if not known
 * @param defrosted whether a defrost ended it
 * @param lasting its last hour
 */
record IcingStretch(
    long startMs,
    long endMs,
    double peak,
    Loss lost,
    double airK,
    double evaporatingK,
    double fallsAwayK,
    double peakApproachK,
    double powerShare,
    boolean defrosted,
    LastingIce lasting) {
  private static final double FREEZING_K = 273.15;

  /** Evaporating above this no ice grows; half a kelvin of doubt below freezing. */
  private static final double ICES_BELOW_K = FREEZING_K - 0.5;

  /**
   * Loss of heat between defrosts that no healthy defrost control lets happen. Sound ones defrost
   * after losing 10 to 25 %; common practice.
   */
  private static final double GREATEST_LOSS = 0.35;

  /** Loss of heat over a long stretch that no defrost ends; ours. */
  private static final double LOSS_WITHOUT_DEFROST = 0.25;

  private static final double LONG_STRETCH_S = 5400;

  /** The evaporating temperature must fall away from the air too, by this; ours. */
  private static final double FALLS_AWAY_K = 2;

  /**
   * A coil that fell this much further below the air carries ice that no sound control leaves:
   * those that go by the coil's temperature defrost when it has fallen by 3 to 6 K; common
   * practice.
   */
  private static final double FAR_AWAY_K = 8;

  /** Heat that such a fall costs at the least; the compressor makes up for some of it; ours. */
  private static final double SOME_LOSS = 0.1;

  /** Heat goes with the air by this share a kelvin; common practice (see the duty's load). */
  static final double HEAT_PER_AIR_K = 0.025;

  /**
   * A loss of heat.
   *
   * @param share part of the heat that seems lost
   * @param riseK rise of the water that it was lost from, NaN where it is not known
   * @param doubt what the probes of that leave open
   */
  record Loss(double share, double riseK, RiseDoubt doubt) {
    private boolean surelyOver(double limit) {
      return doubt.leaves(share, riseK, limit);
    }
  }

  /** Part of the peak that seems lost. */
  double loss() {
    return lost.share();
  }

  /** By the coil, or by the air where no suction pressure tells of it. */
  boolean ices() {
    return Double.isNaN(evaporatingK) ? airK < IcingAir.FROST_BELOW_K : evaporatingK < ICES_BELOW_K;
  }

  /**
   * Whether the heat falls by no more than the power: a compressor that slows down as the water
   * nears its set temperature. Ice takes more of the heat than of the power.
   */
  private boolean isSlower() {
    return 1 - loss() >= PartLoad.COP_HOLDS * powerShare;
  }

  boolean isLost() {
    if (isSlower()) {
      return false;
    }
    boolean fallsAway = Double.isNaN(fallsAwayK) || fallsAwayK > FALLS_AWAY_K;
    if (fallsAwayK > FAR_AWAY_K && loss() > SOME_LOSS) {
      return true;
    }
    return fallsAway && (lost.surelyOver(GREATEST_LOSS) || isLostWithoutDefrost());
  }

  /**
   * Whether much is lost and no defrost came. After hours it only has to be surely more than the
   * little that no sound heater leaves lost for so long.
   */
  private boolean isLostWithoutDefrost() {
    double lengthS = (endMs - startMs) / 1e3;
    double surely = lengthS < LastingIce.LONG_S ? LOSS_WITHOUT_DEFROST : LastingIce.LOSS;
    return lengthS >= LONG_STRETCH_S
        && !defrosted
        && loss() > LOSS_WITHOUT_DEFROST
        && lost.surelyOver(surely);
  }

  /** Whether ice has lain on the coil for long, though it took less of the heat. */
  boolean keepsIce() {
    return !defrosted && lasting.shows((endMs - startMs) / 1e3);
  }
}
