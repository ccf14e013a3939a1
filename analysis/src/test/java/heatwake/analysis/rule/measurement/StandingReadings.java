package heatwake.analysis.rule.measurement;

import heatwake.analysis.scenario.RunBuilder;

/** Readings that stand still, in water that goes on. */
final class StandingReadings {
  private StandingReadings() {}

  /** Repeats what the probe first said. */
  static RunBuilder.Change hungUp() {
    double[] held = {Double.NaN};
    return (atS, value) -> {
      if (Double.isNaN(held[0])) {
        held[0] = value;
      }
      return held[0];
    };
  }

  /** A pool that warms by 0.3 K an hour under a heater of constant duty, in steps of 10 min. */
  static RunBuilder warming(RunBuilder run) {
    for (int k = 0; k < 24; k++) {
      run.pool(25 + 0.05 * k).heating(10);
    }
    return run;
  }

  static RunBuilder warming(RunBuilder run, double fromCel, double toCel, double minutes) {
    for (double at = 0; at < minutes; at += 2) {
      run.pool(fromCel + (toCel - fromCel) * at / minutes).heating(2);
    }
    return run;
  }
}
