package heatwake.analysis.electric;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.timeline.Screening;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.uncertainty.Scatter;
import java.util.Arrays;
import java.util.Optional;

/**
 * How the electric side is known: a kWh meter for energies, unless it is read seldom beside a power
 * meter without holes, a power meter for power; each stands in for the other, and current times
 * voltage for both.
 *
 * @param energy for sums over hours
 * @param power for what is drawn at a moment
 * @param counted the course of power that a kWh meter permits, where nothing measures it
 */
public record Electricity(
    Optional<ElectricStream> energy,
    Optional<ElectricStream> power,
    Optional<CountedPower> counted) {
  /** Power factor of a compressor motor where power is not measured; common practice. */
  private static final double POWER_FACTOR = 0.93;

  /** 0.84 to 1 about it, rectangular, would be 0.05; ours. */
  private static final double POWER_FACTOR_SHARE = 0.05;

  /** A counter read less often smears starts and stops over minutes, ms; ours. */
  private static final long SELDOM_MS = 60_000;

  /** A power meter with more holes than this leaves the sums to the counter; ours. */
  private static final double MOST_UNKNOWN = 0.01;

  /** Finds the streams that a recording allows. */
  public static Electricity of(Recording recording, Timeline timeline) {
    Optional<ElectricStream> sums = counted(recording, timeline);
    Optional<ElectricStream> power =
        powerMeter(recording.rig(), timeline).or(() -> apparent(recording.rig(), timeline));
    Optional<CountedPower> counted =
        power.isPresent() ? Optional.empty() : CountedPower.of(recording, timeline);
    Optional<ElectricStream> meter = power.filter(one -> timeline.has(Channel.POWER));
    boolean meterKnowsBetter =
        meter.isPresent() && isSeldom(timeline) && isWhole(timeline.of(Channel.POWER));
    return new Electricity(
        meterKnowsBetter ? meter : sums.or(() -> power),
        power.or(() -> counted.map(one -> shownByCounter(one, recording.rig(), timeline))),
        counted);
  }

  /** Whether a run of the compressor may begin and end between two readings of the counter. */
  private static boolean isSeldom(Timeline timeline) {
    return timeline.has(Channel.ENERGY) && timeline.intervalMs(Channel.ENERGY) > SELDOM_MS;
  }

  private static boolean isWhole(double[] power) {
    long unknown = Arrays.stream(power).filter(Double::isNaN).count();
    return unknown <= MOST_UNKNOWN * power.length;
  }

  private static Optional<ElectricStream> counted(Recording recording, Timeline timeline) {
    return recording
        .of(Channel.ENERGY)
        .map(series -> EnergyCounter.of(Screening.possible(series)))
        .filter(counter -> counter.size() >= 2)
        .map(
            counter ->
                new ElectricStream(
                    "counted by energy",
                    Bridging.of(
                        timeline,
                        counter.powerW(timeline.startMs(), timeline.stepMs(), timeline.size())),
                    timeline.stepS(),
                    new ProbeUncertainty(
                        0, ProbeUncertainty.of(recording.rig(), Channel.ENERGY).share(), true),
                    0,
                    Math.hypot(
                        counter.edgeJ(),
                        ProbeUncertainty.of(recording.rig(), Channel.ENERGY).absolute())));
  }

  /** What is drawn at a moment, as far as a counter lets it be seen. */
  private static ElectricStream shownByCounter(CountedPower counted, Rig rig, Timeline timeline) {
    ProbeUncertainty meter = ProbeUncertainty.of(rig, Channel.ENERGY);
    return new ElectricStream(
        "counted by energy",
        Bridging.of(timeline, counted.powerW()),
        timeline.stepS(),
        new ProbeUncertainty(0, meter.share(), true),
        0,
        Math.hypot(counted.stepJ() / Math.sqrt(12), meter.absolute()));
  }

  private static Optional<ElectricStream> powerMeter(Rig rig, Timeline timeline) {
    if (!timeline.has(Channel.POWER)) {
      return Optional.empty();
    }
    double[] power = timeline.of(Channel.POWER);
    int lag = timeline.intervalInstants(Channel.POWER);
    return Optional.of(
        new ElectricStream(
            "measured by power",
            Bridging.of(timeline, power),
            timeline.stepS(),
            ProbeUncertainty.of(rig, Channel.POWER),
            Scatter.noise(power, lag) * Math.sqrt(lag),
            0));
  }

  private static Optional<ElectricStream> apparent(Rig rig, Timeline timeline) {
    if (!timeline.has(Channel.CURRENT)) {
      return Optional.empty();
    }
    return Supply.of(rig, timeline).map(supply -> apparent(rig, timeline, supply));
  }

  private static ElectricStream apparent(Rig rig, Timeline timeline, Supply supply) {
    double[] power = timeline.of(Channel.CURRENT).clone();
    double factor = supply.phaseFactor() * POWER_FACTOR;
    for (int i = 0; i < power.length; i++) {
      power[i] *= supply.volts()[i] * factor;
    }
    ProbeUncertainty ammeter = ProbeUncertainty.of(rig, Channel.CURRENT);
    double share = Math.hypot(Math.hypot(supply.share(), POWER_FACTOR_SHARE), ammeter.share());
    return new ElectricStream(
        "current times voltage with a power factor of 0.93 assumed",
        Bridging.of(timeline, power),
        timeline.stepS(),
        new ProbeUncertainty(
            ammeter.absolute() * supply.levelV() * factor, share, ammeter.stated()),
        0,
        0);
  }
}
