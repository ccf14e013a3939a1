package heatwake.analysis.duty;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.Optional;

/** The heat that the exchangers pass: measured, or else what the nameplate lets expect. */
final class CredibleHeat {
  /** Heat below this part of the expected is no measure of how hard exchangers work; ours. */
  private static final double LEAST_CREDIBLE_SHARE = 0.3;

  private CredibleHeat() {}

  /**
   * Measured heat, unless it is so little that the probes or the compressor must be at fault, W.
   */
  static Optional<Estimate> of(Map<DutyFigure, Estimate> figures) {
    Estimate heat = figures.get(DutyFigure.HEAT);
    Estimate expected = figures.get(DutyFigure.EXPECTED_HEAT);
    boolean credible =
        heat != null
            && (expected == null || heat.value() > LEAST_CREDIBLE_SHARE * expected.value());
    return Optional.ofNullable(credible ? heat : expected);
  }
}
