package heatwake.collector.probe;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.frame.Excerpt;
import heatwake.collector.frame.Message;
import heatwake.collector.frame.SentNumber;
import heatwake.collector.frame.SentTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Makes readings of what a source's probes say, and tells the intake of all that is none. One bad
 * field never costs the good ones beside it.
 */
public final class ReadingMaker {
  private final Intake intake;

  public ReadingMaker(Intake intake) {
    this.intake = intake;
  }

  /** What is known of the moment a message was sent when it does not say so itself. */
  public sealed interface Age {
    /** It was sent as it arrived. */
    record Fresh(long arrivedMs) implements Age {}

    /** It may be of any age; without a time stamp of its own it is worthless. */
    record Unknown() implements Age {}
  }

  /** The readings in a message. A field that is absent is no fault: messages may be partial. */
  public List<Reading> from(Message message, List<ProbeTap> taps, Age age) {
    List<Reading> readings = new ArrayList<>(taps.size());
    for (ProbeTap tap : taps) {
      message
          .field(tap.field())
          .flatMap(text -> read(message, tap, text, age))
          .ifPresent(readings::add);
    }
    return readings;
  }

  private Optional<Reading> read(Message message, ProbeTap tap, String text, Age age) {
    OptionalDouble sent = tap.number(text);
    if (sent.isEmpty()) {
      if (SentNumber.isFault(text)) {
        fault(tap.channel(), "the probe sent " + Excerpt.of(text));
      } else {
        intake.happened(
            EventKind.UNREADABLE, tap.channel().id(), Excerpt.of(text) + " is not a number");
      }
      return Optional.empty();
    }
    OptionalLong stamp = ownTime(message, tap);
    if (stamp.isPresent()) {
      return reading(tap.channel(), tap.conversion(), sent.getAsDouble(), stamp.getAsLong(), true);
    }
    if (age instanceof Age.Fresh fresh) {
      return reading(tap.channel(), tap.conversion(), sent.getAsDouble(), fresh.arrivedMs(), false);
    }
    intake.happened(
        EventKind.TIME_REFUSED,
        tap.channel().id(),
        "a retained message without a time of its own may be of any age; not stored");
    return Optional.empty();
  }

  private OptionalLong ownTime(Message message, ProbeTap tap) {
    if (tap.time().isEmpty()) {
      return OptionalLong.empty();
    }
    Optional<String> text = message.field(tap.time().get());
    OptionalLong time = text.map(SentTime::parse).orElse(OptionalLong.empty());
    if (time.isEmpty()) {
      intake.happened(
          EventKind.TIME_REFUSED,
          tap.channel().id(),
          text.map(said -> "the time " + Excerpt.of(said) + " is not ISO-8601 with offset or ms")
                  .orElse("no time at \"" + tap.time().get() + "\"")
              + "; stamped on arrival");
    }
    return time;
  }

  /** The reading a number as sent stands for, unless the sensor reports a fault by it. */
  public Optional<Reading> reading(
      Channel channel,
      ProbeConversion conversion,
      double sent,
      long timeMs,
      boolean stampedByProbe) {
    ProbeConversion.Converted converted = conversion.convert(sent, timeMs);
    if (converted instanceof ProbeConversion.Converted.Value value) {
      return Optional.of(new Reading(channel, timeMs, value.stored(), stampedByProbe));
    }
    if (converted instanceof ProbeConversion.Converted.Fault fault) {
      fault(channel, fault.reason());
    }
    return Optional.empty();
  }

  private void fault(Channel channel, String reason) {
    intake.happened(EventKind.SENSOR_FAULT, channel.id(), reason);
  }
}
