package heatwake.dashboard.demo.plant.sensor;

import heatwake.dashboard.demo.plant.Tap;

/** Takes the readings of simulated probes. */
@FunctionalInterface
public interface Reader {
  /**
   * One reading.
   *
   * @param timeMs as stamped by the probe, UTC milliseconds
   * @param value in the tap's unit
   */
  void read(Tap tap, long timeMs, double value);
}
