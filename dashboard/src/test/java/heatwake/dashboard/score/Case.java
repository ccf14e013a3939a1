package heatwake.dashboard.score;

import heatwake.analysis.finding.Side;
import heatwake.dashboard.demo.plant.fault.Severity;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import heatwake.dashboard.demo.plant.night.Night;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * One run of the bench with what is true of it.
 *
 * @param name what is simulated, in short
 * @param night the run
 * @param nameplate the heater's plate
 * @param truth what a good analysis says
 */
record Case(String name, Night night, Nameplate nameplate, Truth truth) {

  private static final String RESTART = "restart-too-soon";

  /** How much shorter than the delay a rest is that is meant to be found, s. */
  private static final double SHORTER_S = 10;

  /**
   * The same as it came to be played. A delay that is ignored does not show where the thermostat
   * rests the compressor longer than that anyway; then what there is to be seen is the cycling.
   */
  Case as(heatwake.dashboard.demo.plant.Truth played) {
    if (!truth.named().contains(RESTART) || restsTooShort(played)) {
      return this;
    }
    Set<String> named = new TreeSet<>(truth.named());
    named.remove(RESTART);
    named.add("short-cycling");
    return new Case(
        name + ", never shorter than the delay",
        night,
        nameplate,
        new Truth(truth.severity(), named, truth.follows(), truth.sides()));
  }

  private boolean restsTooShort(heatwake.dashboard.demo.plant.Truth played) {
    List<Double> starts = played.startsS();
    List<Double> stops = played.stopsS();
    double delayS = night.site().heater().sequence().restartDelayS();
    for (int i = 1; i < starts.size(); i++) {
      if (starts.get(i) - stops.get(i - 1) < delayS - SHORTER_S) {
        return true;
      }
    }
    return false;
  }

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
