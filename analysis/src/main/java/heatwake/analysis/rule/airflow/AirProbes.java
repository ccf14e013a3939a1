package heatwake.analysis.rule.airflow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.ProbeUncertainty;

/** The two air probes as a pair. */
final class AirProbes {
  private AirProbes() {}

  /** Standard uncertainty of the difference of the two, at an air temperature in K. */
  static double standardK(Evidence evidence, double airK) {
    Rig rig = evidence.recording().rig();
    return Math.hypot(
        ProbeUncertainty.of(rig, Channel.AIR_IN).atTemperatureK(airK),
        ProbeUncertainty.of(rig, Channel.AIR_AMBIENT).atTemperatureK(airK));
  }
}
