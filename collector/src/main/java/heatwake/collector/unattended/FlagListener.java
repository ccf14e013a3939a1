package heatwake.collector.unattended;

import heatwake.analysis.finding.Flag;

/** Is told of flags as they arise. */
public interface FlagListener {
  /**
   * A flag has arisen.
   *
   * @param site name of the site
   * @param run number of the run
   */
  void arose(String site, long run, Flag flag);
}
