package heatwake.dashboard.demo.plant.sensor;

import heatwake.dashboard.demo.plant.Plant;
import heatwake.dashboard.demo.plant.Tap;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A simulated probe. Three tenths of its stated uncertainty are noise, the rest is a systematic
 * error that stays for the whole run; together, by the root of their squares, they are what is
 * stated. A thermometer also has a slope of its own, as calibrations show.
 */
public final class Sensor {
  private static final double RANDOM = 0.3;
  private static final double SYSTEMATIC = Math.sqrt(1 - RANDOM * RANDOM);

  /**
   * Standard deviation of a thermometer's slope about {@link #CALIBRATED_C}, for each kelvin it is
   * uncertain by: 0.35 % for a probe of 0.1 K; from memory.
   */
  private static final double SLOPE_PER_K = 0.035;

  private static final double CALIBRATED_C = 20;
  private static final double SLIPPED_LAG_S = 150;

  /** A logger that keeps only changes keeps a reading at least so often. */
  static final double SIGN_OF_LIFE_S = 600;

  private final SensorSpec spec;
  private final List<ProbeTrouble> troubles;
  private final SplittableRandom random;
  private final double systematic;
  private final double slope;
  private final long phaseMs;
  private double felt = Double.NaN;
  private double slipped;
  private double nextS;
  private double lastReported = Double.NaN;
  private double lastKept = Double.NaN;
  private double lastKeptS;

  public Sensor(SensorSpec spec, List<ProbeTrouble> troubles, SplittableRandom random) {
    this.spec = spec;
    this.troubles = List.copyOf(troubles);
    this.random = random;
    this.systematic = SYSTEMATIC * random.nextGaussian();
    boolean strict = spec.jitter() == 0;
    this.phaseMs = strict ? 0 : random.nextInt(1000);
    this.slope =
        spec.tap().isTemperature() ? SLOPE_PER_K * spec.stated() * random.nextGaussian() : 0;
    this.nextS = strict ? spec.intervalS() : random.nextDouble() * spec.intervalS();
  }

  /** Where it is clipped. */
  public Tap tap() {
    return spec.tap();
  }

  /** Where within a second it reports. */
  public long phaseMs() {
    return phaseMs;
  }

  /**
   * Moves on.
   *
   * @return a reading in the tap's unit if it reports one now, else NaN
   */
  public double step(double dtS, Plant plant) {
    double now = plant.timeS();
    double truth = truth(plant, now);
    felt =
        spec.lagS() <= dtS || Double.isNaN(felt)
            ? truth
            : felt + (truth - felt) * dtS / spec.lagS();
    if (now < nextS) {
      return Double.NaN;
    }
    nextS =
        Math.max(nextS + spec.intervalS() * (1 + spec.jitter() * (random.nextDouble() - 0.5)), now);
    double noise = random.nextGaussian();
    if (random.nextDouble() < spec.lossRate()) {
      return Double.NaN;
    }
    return kept(report(noise, now), now);
  }

  private double kept(double value, double now) {
    boolean isNews =
        Double.isNaN(lastKept)
            || Math.abs(value - lastKept) >= spec.deadBand()
            || now - lastKeptS >= SIGN_OF_LIFE_S;
    if (!isNews) {
      return Double.NaN;
    }
    lastKept = value;
    lastKeptS = now;
    return value;
  }

  private double truth(Plant plant, double now) {
    double truth = spec.tap().truth(plant);
    for (ProbeTrouble trouble : troubles) {
      if (now < trouble.startS()) {
        continue;
      }
      if (trouble.kind() == ProbeTrouble.Kind.SWAPPED) {
        truth = partner(spec.tap()).truth(plant);
      } else if (trouble.kind() == ProbeTrouble.Kind.SLIPPED) {
        slipped += (trouble.level() - slipped) / SLIPPED_LAG_S;
        truth += slipped * (plant.weather().airC() - truth);
      }
    }
    return truth;
  }

  private static Tap partner(Tap tap) {
    return tap == Tap.WATER_IN ? Tap.WATER_OUT : Tap.WATER_IN;
  }

  private double report(double noise, double now) {
    double value = felt;
    if (!spec.tap().isState()) {
      double unit = spec.relative() ? spec.stated() * Math.abs(felt) : spec.stated();
      double random = spec.tap() == Tap.ENERGY ? 0 : RANDOM * noise;
      value += unit * (systematic + random) + slope * (felt - CALIBRATED_C);
    }
    for (ProbeTrouble trouble : troubles) {
      if (now < trouble.startS()) {
        continue;
      }
      switch (trouble.kind()) {
        case OFFSET -> value += trouble.level();
        case OPEN -> {
          return trouble.level();
        }
        case STUCK -> {
          return lastReported;
        }
        case SILENT -> {
          if (now < trouble.startS() + trouble.level() * 60) {
            return Double.NaN;
          }
        }
        case SWAPPED, SLIPPED -> {}
      }
    }
    if (spec.resolution() > 0) {
      value = Math.rint(value / spec.resolution()) * spec.resolution();
    }
    if (spec.tap() == Tap.WIND_SPEED) {
      value = Math.max(0, value);
    }
    if (spec.tap() == Tap.HUMIDITY_IN) {
      value = Math.min(100, value);
    }
    lastReported = value;
    return value;
  }
}
