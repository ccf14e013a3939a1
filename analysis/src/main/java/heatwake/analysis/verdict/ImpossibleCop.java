package heatwake.analysis.verdict;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * A COP of the run that no heater reaches, whether or not it ever ran steadily. The second law
 * allows T / (T - T_air) between water and air, both in kelvin (Carnot); the steps that heat needs
 * to pass the two exchangers and the losses of compressor and fan take more than half of it (real
 * heat pumps reach 30 to 50 %: common practice). Where the air is hardly colder than the water that
 * bounds nothing; there the best heaters reach 16 at their least speed (common practice).
 */
final class ImpossibleCop {
  /** COP above which none is believed in any air; ours, reasoned above. */
  static final double MOST = 20;

  /** Share of Carnot's COP that no air-source heat pump exceeds; common practice. */
  static final double SHARE_OF_CARNOT = 0.5;

  private ImpossibleCop() {}

  /** Why the run's COP cannot be, in words; empty if it can or is not known. */
  static Optional<String> why(Evidence evidence) {
    Optional<Estimate> cop = evidence.heat().cop();
    if (cop.isEmpty() || evidence.heat().flowIsAssumed()) {
      return Optional.empty();
    }
    OptionalDouble water = coolest(evidence);
    OptionalDouble air = warmest(evidence);
    String said = String.format(Locale.ROOT, "a COP of %.1f cannot be right: ", cop.get().value());
    if (water.isPresent() && air.isPresent() && water.getAsDouble() > air.getAsDouble()) {
      double carnot = water.getAsDouble() / (water.getAsDouble() - air.getAsDouble());
      double half = SHARE_OF_CARNOT * carnot;
      if (half < MOST) {
        return Doubt.above(cop.get(), half)
            ? Optional.of(
                said
                    + String.format(
                        Locale.ROOT,
                        "from air of %s to water of %s no heater exceeds half of Carnot's, %.1f",
                        Wording.celsius(air.getAsDouble()),
                        Wording.celsius(water.getAsDouble()),
                        half))
            : Optional.empty();
      }
    }
    return Doubt.above(cop.get(), MOST)
        ? Optional.of(said + String.format(Locale.ROOT, "no heater exceeds %.0f", MOST))
        : Optional.empty();
  }

  /** The water that asks least of the heater: the cooler of what its probes say. */
  private static OptionalDouble coolest(Evidence evidence) {
    return Stream.of(Channel.WATER_POOL, Channel.WATER_IN, Channel.WATER_OUT)
        .map(channel -> whileRunning(channel, evidence))
        .flatMapToDouble(OptionalDouble::stream)
        .min();
  }

  private static OptionalDouble warmest(Evidence evidence) {
    return Stream.of(Channel.AIR_IN, Channel.AIR_AMBIENT)
        .map(channel -> whileRunning(channel, evidence))
        .flatMapToDouble(OptionalDouble::stream)
        .max();
  }

  /** Mean of a channel from compressor starts to stops, each cycle by its length. */
  private static OptionalDouble whileRunning(Channel channel, Evidence evidence) {
    double sum = 0;
    double weight = 0;
    for (Cycle cycle : evidence.cycles()) {
      long stopMs = cycle.stopMs().orElse(evidence.recording().endMs());
      OptionalDouble mean = evidence.timeline().meanBetween(channel, cycle.startMs(), stopMs);
      if (mean.isPresent()) {
        sum += mean.getAsDouble() * (stopMs - cycle.startMs());
        weight += stopMs - cycle.startMs();
      }
    }
    return weight > 0 ? OptionalDouble.of(sum / weight) : OptionalDouble.empty();
  }
}
