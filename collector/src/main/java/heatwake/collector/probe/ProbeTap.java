package heatwake.collector.probe;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.collector.frame.SentNumber;
import heatwake.collector.rig.ProbeSpec;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One probe's place in its source's messages.
 *
 * @param field where its value is, in the terms of the source's messages
 * @param time where its own time stamp is, if it has one
 */
public record ProbeTap(
    Channel channel, String field, Optional<String> time, ProbeConversion conversion) {

  /** The tap of a probe whose value is in {@code field}. */
  public static ProbeTap of(ProbeSpec probe, String field) {
    return new ProbeTap(probe.channel(), field, probe.time(), ProbeConversion.of(probe));
  }

  /** The number a text stands for on this channel, if it stands for one. */
  OptionalDouble number(String text) {
    return channel.quantity() == Quantity.STATE ? SentNumber.state(text) : SentNumber.number(text);
  }
}
