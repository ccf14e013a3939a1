package heatwake.dashboard.score;

import heatwake.analysis.finding.Side;
import heatwake.dashboard.demo.plant.fault.Severity;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import heatwake.dashboard.demo.plant.night.Night;
import java.util.Optional;
import java.util.Set;

/**
 * One run of the bench with what is true of it.
 *
 * @param name what is simulated, in short
 * @param night the run
 * @param nameplate the heater's plate
 * @param truth what a good analysis says
 */
record Case(String name, Night night, Nameplate nameplate, Truth truth) {

  /**
   * What is true.
   *
   * @param severity of the fault; empty on a healthy run
   * @param named flags that name the fault: one of them is enough
   * @param follows flags that the fault brings with it and that are no mistake
   * @param sides verdicts that are right
   */
  record Truth(
      Optional<Severity> severity, Set<String> named, Set<String> follows, Set<Side> sides) {
    static final Truth HEALTHY =
        new Truth(Optional.empty(), Set.of(), Set.of(), Set.of(Side.HEALTHY, Side.UNDECIDED));

    boolean isHealthy() {
      return severity.isEmpty();
    }

    boolean expects(String rule) {
      return named.contains(rule) || follows.contains(rule);
    }
  }
}
