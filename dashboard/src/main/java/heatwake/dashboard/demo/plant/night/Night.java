package heatwake.dashboard.demo.plant.night;

import heatwake.dashboard.demo.plant.Plant;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Truth;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import heatwake.dashboard.demo.plant.sensor.Reader;
import heatwake.dashboard.demo.plant.sensor.Sensor;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * One run of a simulated site with probes clipped on.
 *
 * @param site the site
 * @param ailments what is wrong with it
 * @param probes what is clipped where
 * @param troubles what is wrong with the probes
 * @param clockSteps how the logger's clock jumps
 * @param builder what heat pump it is
 * @param startMs when it begins, UTC milliseconds
 * @param seed same seed, same run
 */
public record Night(
    SiteDesign site,
    List<Ailment> ailments,
    List<SensorSpec> probes,
    List<ProbeTrouble> troubles,
    List<ClockStep> clockSteps,
    Plant.Builder builder,
    long startMs,
    long seed) {

  private static final double STEP_S = 1;

  /** The clock jumps by so many milliseconds, so many seconds into the run. */
  public record ClockStep(double atS, long byMs) {}

  public Night {
    ailments = List.copyOf(ailments);
    probes = List.copyOf(probes);
    troubles = List.copyOf(troubles);
    clockSteps = List.copyOf(clockSteps);
  }

  /** Last moment of the run. */
  public long endMs() {
    return startMs + Math.round(site.runS() * 1000);
  }

  /** Plays the whole run and hands over its readings in order of time. */
  public Truth play(Reader reader) {
    SplittableRandom random = new SplittableRandom(seed);
    Plant plant = new Plant(site, ailments, builder, random.nextLong());
    List<Sensor> sensors = new ArrayList<>();
    for (SensorSpec probe : probes) {
      List<ProbeTrouble> own =
          troubles.stream().filter(trouble -> trouble.tap() == probe.tap()).toList();
      sensors.add(new Sensor(probe, own, random.split()));
    }
    Truth truth = new Truth(site.runS(), STEP_S);
    long steps = Math.round(site.runS() / STEP_S);
    for (long i = 0; i < steps; i++) {
      plant.step(STEP_S);
      truth.note(plant);
      long timeMs = startMs + Math.round(plant.timeS() * 1000) + clockShiftMs(plant.timeS());
      for (Sensor sensor : sensors) {
        double value = sensor.step(STEP_S, plant);
        if (!Double.isNaN(value)) {
          reader.read(sensor.tap(), timeMs + sensor.phaseMs(), value);
        }
      }
    }
    return truth;
  }

  private long clockShiftMs(double timeS) {
    long shift = 0;
    for (ClockStep step : clockSteps) {
      if (timeS >= step.atS()) {
        shift += step.byMs();
      }
    }
    return shift;
  }
}
