package heatwake.dashboard.demo.plant.sensor;

import heatwake.dashboard.demo.plant.Tap;
import java.util.Collection;
import java.util.List;

/**
 * The probes a technician owns: how good they are and how often they report.
 *
 * @param intervalS time between readings
 * @param jitter random part of it, a share
 * @param lossRate part of readings lost on the way
 * @param waterK standard uncertainty of a water probe
 * @param waterLagS lag of a water probe, which is strapped to the pipe
 * @param flowShare standard uncertainty of a flow meter, a share
 * @param finesse resolution, as a multiple of the usual
 * @param deadBand change below which a probe keeps silent, as a multiple of its resolution
 */
public record Kit(
    double intervalS,
    double jitter,
    double lossRate,
    double waterK,
    double waterLagS,
    double flowShare,
    double finesse,
    double deadBand) {

  /** A good kit: clip-on probes of 0.1 K, a flow meter of 2 %. */
  public static Kit good(double intervalS) {
    return new Kit(intervalS, 0.1, 0, 0.1, 14, 0.02, 1, 0);
  }

  /** The same probes with a logger that keeps only what has changed. */
  public Kit onChange() {
    return new Kit(intervalS, jitter, lossRate, waterK, waterLagS, flowShare, finesse, 5);
  }

  /** Clips probes of this kit to taps. */
  public List<SensorSpec> clip(Collection<Tap> taps) {
    return taps.stream().map(this::probe).toList();
  }

  private SensorSpec probe(Tap tap) {
    return switch (tap) {
      case WATER_IN -> temperature(tap, waterK, waterLagS);
      // The outlet's clip sits on a thicker pipe.
      case WATER_OUT, WATER_RETURN -> temperature(tap, waterK, waterLagS * 1.4);
      case WATER_POOL -> temperature(tap, waterK, 60);
      case TEMP_DISCHARGE, TEMP_LIQUID, TEMP_SUCTION -> temperature(tap, 0.4, 10);
      case AIR_IN, AIR_OUT, AIR_AMBIENT -> temperature(tap, 0.25, 45);
      case HUMIDITY_IN -> absolute(tap, 2, 60, 0.1);
      case FLOW_HEATER, FLOW_TOTAL -> relative(tap, flowShare, 2, 0.1);
      case PRESSURE_FILTER -> absolute(tap, 1, 0.5, 0.1);
      case PRESSURE_DISCHARGE -> absolute(tap, 12, 0.5, 1);
      case PRESSURE_SUCTION -> absolute(tap, 6, 0.5, 1);
      case POWER -> relative(tap, 0.01, 0, 1);
      case CURRENT -> relative(tap, 0.015, 0, 0.01);
      case VOLTAGE -> relative(tap, 0.005, 0, 0.1);
      case ENERGY -> relative(tap, 0.01, 0, 0.001);
      case WIND_SPEED -> absolute(tap, 0.2, 3, 0.1);
      case PUMP_ON, FLOW_SWITCH -> absolute(tap, 0, 0, 0);
    };
  }

  private SensorSpec temperature(Tap tap, double stated, double lagS) {
    return absolute(tap, stated, lagS, 0.01);
  }

  private SensorSpec absolute(Tap tap, double stated, double lagS, double resolution) {
    return new SensorSpec(
        tap,
        stated,
        false,
        intervalS,
        jitter,
        lagS,
        resolution * finesse,
        lossRate,
        deadBand * resolution * finesse);
  }

  private SensorSpec relative(Tap tap, double share, double lagS, double resolution) {
    return new SensorSpec(
        tap,
        share,
        true,
        intervalS,
        jitter,
        lagS,
        resolution * finesse,
        lossRate,
        deadBand * resolution * finesse);
  }
}
