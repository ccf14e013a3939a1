package heatwake.analysis.expected;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The air that enters the coil: at the coil if it is read there, else outdoors. A heater makes the
 * air at its coil colder, if its own comes back, but never warmer. Where air-in reads well above
 * air-ambient one of the two stands in the sun or by a warm wall, and nothing tells which: then the
 * air is taken to lie anywhere between.
 *
 * @param temperatureK the air, K, with what the probes and their places leave open
 * @param warmerByK how much warmer the inlet reads than the outdoor air, K, where that cannot be;
 *     else 0
 */
public record EnteringAir(Estimate temperatureK, double warmerByK) {
  /** How far the air at the coil may differ from the air outdoors; ours, K. */
  private static final double AMBIENT_FOR_INLET_K = 0.5;

  /** Two probes of one air read alike within this and their uncertainty; ours, K. */
  private static final double ALIKE_WITHIN_K = 1;

  /** Mean air over instants; empty if none is known there. */
  public static Optional<EnteringAir> of(Timeline timeline, Rig rig, int from, int to) {
    Optional<Estimate> inlet = mean(Channel.AIR_IN, timeline, rig, from, to);
    Optional<Estimate> outdoor =
        mean(Channel.AIR_AMBIENT, timeline, rig, from, to)
            .map(
                read ->
                    new Estimate(read.value(), Math.hypot(read.standard(), AMBIENT_FOR_INLET_K)));
    if (inlet.isEmpty() || outdoor.isEmpty()) {
      Channel channel = channel(timeline);
      return (channel == Channel.AIR_IN ? inlet : outdoor).map(one -> new EnteringAir(one, 0));
    }
    Estimate warmer =
        new Estimate(
            inlet.get().value() - outdoor.get().value(),
            Math.hypot(inlet.get().standard(), outdoor.get().standard()));
    if (warmer.value() - warmer.expanded() <= ALIKE_WITHIN_K) {
      return Optional.of(new EnteringAir(inlet.get(), 0));
    }
    double middleK = outdoor.get().value() + warmer.value() / 2;
    // Rectangular from one to the other (GUM 4.3.7).
    double betweenK = warmer.value() / 2 / Math.sqrt(3);
    return Optional.of(
        new EnteringAir(
            new Estimate(middleK, Math.hypot(betweenK, warmer.standard() / 2)), warmer.value()));
  }

  /** The channel that tells the entering air: at the coil, else outdoors. */
  public static Channel channel(Timeline timeline) {
    return timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
  }

  /** What to say of an inlet that reads warmer than it can be; empty where it never does. */
  public static List<String> missing(Timeline timeline, Rig rig, List<Stretch> running) {
    double mostK =
        running.stream()
            .flatMap(one -> of(timeline, rig, one.from(), one.to()).stream())
            .mapToDouble(EnteringAir::warmerByK)
            .max()
            .orElse(0);
    return mostK > 0
        ? List.of(
            String.format(
                Locale.ROOT,
                "entering air: air-in reads up to %.1f K above air-ambient, which no heater does to"
                    + " its air, so one of them stands in the sun or by a warm wall; their middle is"
                    + " taken with that doubt. Shade both",
                mostK))
        : List.of();
  }

  private static Optional<Estimate> mean(
      Channel channel, Timeline timeline, Rig rig, int from, int to) {
    double meanK = MovingMean.once(timeline.of(channel), from, to);
    return Double.isNaN(meanK)
        ? Optional.empty()
        : Optional.of(new Estimate(meanK, ProbeUncertainty.of(rig, channel).atTemperatureK(meanK)));
  }
}
