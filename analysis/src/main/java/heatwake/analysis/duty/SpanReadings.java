package heatwake.analysis.duty;

import heatwake.analysis.expected.EnteringAir;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the probes read over a steady span, and how far it can be relied on.
 *
 * @param rig states the probes' uncertainties
 * @param timeline the readings
 */
record SpanReadings(Rig rig, Timeline timeline) {
  /** Stands for the temperature of a pipe that was not read, K; only its uncertainty is asked. */
  private static final double SOME_PIPE_K = 273.15 + 27;

  /** Mean of a channel in SI units, if it was read. */
  OptionalDouble mean(Channel channel, SteadySpan span) {
    return timeline.meanBetween(channel, span.startMs(), span.endMs());
  }

  /** The air that enters the coil. */
  Optional<EnteringAir> enteringAir(SteadySpan span) {
    int to = Math.min(timeline.size(), timeline.indexAt(span.endMs()) + 1);
    return EnteringAir.of(timeline, rig, timeline.firstAtOrAfter(span.startMs()), to);
  }

  /** Mean of a temperature probe with its uncertainty, K, if it was read. */
  Optional<Estimate> temperature(Channel channel, SteadySpan span) {
    OptionalDouble meanK = mean(channel, span);
    return meanK.isPresent()
        ? Optional.of(
            new Estimate(meanK.getAsDouble(), temperatureStandardK(channel, meanK.getAsDouble())))
        : Optional.empty();
  }

  /** Standard uncertainty of a value of a channel, in its SI unit. */
  double standard(Channel channel, double value) {
    return ProbeUncertainty.of(rig, channel).at(value);
  }

  /** Standard uncertainty of a temperature, K. */
  double temperatureStandardK(Channel channel, double valueK) {
    return ProbeUncertainty.of(rig, channel).atTemperatureK(valueK);
  }

  /** Standard uncertainty of a temperature probe over a span, K. */
  double temperatureStandardK(Channel channel, SteadySpan span) {
    return temperatureStandardK(channel, mean(channel, span).orElse(SOME_PIPE_K));
  }
}
