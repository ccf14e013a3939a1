package heatwake.analysis.duty;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.Optional;

/** The heat that the exchangers pass: measured, or else what the nameplate lets expect. */
final class CredibleHeat {
  /** Heat below this part of the expected is no measure of how hard exchangers work; ours. */
  private static final double LEAST_CREDIBLE_SHARE = 0.3;

  /**
   * Heat measured worse than this tells less of how hard exchangers work than the air's temperature
   * alone does, from which it is known to 15 %; ours.
   */
  private static final double GREATEST_DOUBT = 0.15;

  private CredibleHeat() {}

  /**
   * Measured heat, unless it is so little that the probes or the compressor must be at fault, or
   * known so badly that what the nameplate promises says more, W. A heater that ails passes less
   * than that, so its approaches at full load then come out too small, never too great.
   */
  static Optional<Estimate> of(Map<DutyFigure, Estimate> figures) {
    Estimate heat = figures.get(DutyFigure.HEAT);
    Estimate expected = figures.get(DutyFigure.EXPECTED_HEAT);
    boolean credible =
        heat != null
            && (expected == null
                || (heat.value() > LEAST_CREDIBLE_SHARE * expected.value()
                    && doubt(heat) < Math.max(GREATEST_DOUBT, doubt(expected))));
    return Optional.ofNullable(credible ? heat : expected);
  }

  private static double doubt(Estimate heat) {
    return heat.standard() / heat.value();
  }
}
