package heatwake.analysis.duty;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The circuit at rest. Liquid lies somewhere in it, so its pressure is no higher than saturation at
 * its warmest part, unless a gas that does not condense adds its own.
 */
final class RestingCircuit {
  /** Sides have equalised and exchangers have taken on their surroundings; common practice. */
  private static final long SETTLED_MS = 600_000;

  private static final long LEAST_MS = 120_000;

  /** A pressure stands still that moves by less than this between halves of a rest: 0.4 K; ours. */
  private static final double STANDS_STILL = 0.01;

  /** No air about a pool heater is hotter than this, where none is read, K; ours. */
  private static final double HOTTEST_AIR_K = 273.15 + 45;

  /**
   * Relative change of saturation pressure per kelvin, the least met at rest; see SaturationSlope.
   */
  private static final double SATURATION_SLOPE_PER_K = 0.025;

  /** How far parts of a heater may be warmer than air and water beside them, K; ours. */
  private static final double SURROUNDINGS_K = 0.7;

  private RestingCircuit() {}

  /**
   * Saturation temperature of the standing pressure above the warmer of air and water, K; the
   * greatest of all rests seen.
   */
  static Optional<Estimate> excessK(Rig rig, Timeline timeline, List<PhaseSpan> phases) {
    if (rig.heater().refrigerant().isEmpty() || !timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return Optional.empty();
    }
    Saturation saturation = Saturation.of(rig.heater().refrigerant().get());
    AbsolutePressure atmosphere = Atmosphere.standard(rig.site().altitudeM());
    Optional<Estimate> greatest = Optional.empty();
    long restSinceMs = -1;
    for (int k = 0; k <= phases.size(); k++) {
      boolean rests = k < phases.size() && isRest(phases.get(k).phase());
      if (rests) {
        restSinceMs = restSinceMs < 0 ? phases.get(k).startMs() : restSinceMs;
      } else if (restSinceMs >= 0) {
        long endMs = phases.get(k - 1).endMs();
        long settledMs =
            restSinceMs == phases.get(0).startMs()
                ? settledBefore(timeline, atmosphere, phases, endMs)
                : restSinceMs + SETTLED_MS;
        Optional<Estimate> one = excess(rig, timeline, saturation, atmosphere, settledMs, endMs);
        if (one.isPresent() && (greatest.isEmpty() || one.get().value() > greatest.get().value())) {
          greatest = one;
        }
        restSinceMs = -1;
      }
    }
    return greatest;
  }

  /**
   * Since when the circuit has been at rest that a recording begins with. Such a rest began before:
   * moving water has the condenser at its own temperature within minutes, and a high side that
   * stands still then has nothing left to settle.
   */
  private static long settledBefore(
      Timeline timeline, AbsolutePressure atmosphere, List<PhaseSpan> phases, long endMs) {
    long startMs = phases.get(0).startMs();
    long movingMs =
        phases.stream()
            .filter(span -> span.phase() == Phase.CIRCULATING && span.endMs() <= endMs)
            .mapToLong(PhaseSpan::startMs)
            .findFirst()
            .orElse(endMs);
    long middleMs = (movingMs + endMs) / 2;
    OptionalDouble early = timeline.meanBetween(Channel.PRESSURE_DISCHARGE, movingMs, middleMs - 1);
    OptionalDouble late = timeline.meanBetween(Channel.PRESSURE_DISCHARGE, middleMs, endMs);
    boolean stands =
        early.isPresent()
            && late.isPresent()
            && Math.abs(late.getAsDouble() - early.getAsDouble())
                < STANDS_STILL * (late.getAsDouble() + atmosphere.pa());
    return stands ? Math.min(movingMs, startMs + SETTLED_MS) : startMs + SETTLED_MS;
  }

  /** Where nothing tells what the heater did, it may have run. */
  private static boolean isRest(Phase phase) {
    return !phase.compressorRuns() && phase != Phase.UNKNOWN;
  }

  private static Optional<Estimate> excess(
      Rig rig,
      Timeline timeline,
      Saturation saturation,
      AbsolutePressure atmosphere,
      long fromMs,
      long toMs) {
    OptionalDouble gauge = timeline.meanBetween(Channel.PRESSURE_DISCHARGE, fromMs, toMs);
    if (toMs - fromMs < LEAST_MS || gauge.isEmpty()) {
      return Optional.empty();
    }
    double pa = gauge.getAsDouble() + atmosphere.pa();
    double warmest = Double.NEGATIVE_INFINITY;
    boolean air = false;
    boolean water = false;
    for (Channel channel :
        List.of(Channel.AIR_AMBIENT, Channel.AIR_IN, Channel.WATER_IN, Channel.WATER_OUT)) {
      OptionalDouble mean = timeline.meanBetween(channel, fromMs, toMs);
      if (mean.isPresent()) {
        warmest = Math.max(warmest, mean.getAsDouble());
        air |= channel == Channel.AIR_AMBIENT || channel == Channel.AIR_IN;
        water |= channel == Channel.WATER_IN || channel == Channel.WATER_OUT;
      }
    }
    boolean within =
        pa > saturation.bubblePressure(Saturation.LOWEST_K).pa()
            && pa < saturation.bubblePressure(saturation.highestK() - 1).pa();
    if (!air) {
      warmest = Math.max(warmest, HOTTEST_AIR_K);
    }
    double excessK =
        within ? saturation.bubbleTemperatureK(new AbsolutePressure(pa)) - warmest : Double.NaN;
    // Below air that is not known a pressure says nothing.
    if (!water || !within || !(air || excessK > 0)) {
      return Optional.empty();
    }
    double relative = ProbeUncertainty.of(rig, Channel.PRESSURE_DISCHARGE).at(pa) / pa;
    return Optional.of(
        new Estimate(excessK, Math.hypot(SURROUNDINGS_K, relative / SATURATION_SLOPE_PER_K)));
  }
}
