package heatwake.dashboard.demo;

import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.night.Night;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import java.util.List;

/**
 * One story the demo can tell.
 *
 * @param name what the person types
 * @param story what is going on, in one line
 * @param site the site that night
 * @param probes what is clipped where
 * @param ailments what is wrong with the site
 * @param troubles what is wrong with the probes
 */
public record Scenario(
    String name,
    String story,
    SiteDesign site,
    List<SensorSpec> probes,
    List<Ailment> ailments,
    List<ProbeTrouble> troubles) {

  private static final long SEED = 1811;

  public Scenario {
    probes = List.copyOf(probes);
    ailments = List.copyOf(ailments);
    troubles = List.copyOf(troubles);
  }

  /** The story as it happens from a moment on. */
  Night from(long startMs) {
    return new Night(site, ailments, probes, troubles, List.of(), DemoSite.piece(), startMs, SEED);
  }
}
