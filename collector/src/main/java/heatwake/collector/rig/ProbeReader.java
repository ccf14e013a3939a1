package heatwake.collector.rig;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.quantity.UnknownUnitException;
import heatwake.analysis.sensor.SensorLoop;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.collector.mistake.NearestWord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a rig says is clipped where, probe by probe. */
final class ProbeReader {
  private static final List<String> PLAIN_KEYS =
      List.of("channel", "source", "unit", "scale", "uncertainty", "every", "sensor");
  private static final List<String> KEYS = keys();

  private final AddressReader addresses;
  private final Map<Channel, Probe> analysed = new LinkedHashMap<>();
  private final List<ProbeSpec> specs = new ArrayList<>();

  ProbeReader(List<SourceSpec> sources, RigReader.UnknownSource unknownSource) {
    this.addresses = new AddressReader(sources, unknownSource);
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>(PLAIN_KEYS);
    keys.addAll(AddressReader.KEYS);
    keys.addAll(SensorReader.keys());
    return List.copyOf(keys);
  }

  /** What the analysis needs to know of the probes read so far. */
  Map<Channel, Probe> analysed() {
    return analysed;
  }

  /** The probes read so far, in the order of the file. */
  List<ProbeSpec> specs() {
    return specs;
  }

  void read(TomlTable table) {
    table.only(KEYS);
    Channel channel = channel(table);
    if (analysed.containsKey(channel)) {
      throw table.mistake(
          "channel", "a second probe on channel " + channel + "; one channel has one probe");
    }
    Optional<String> source = table.text("source");
    OptionalDouble intervalS = table.measure("every", Quantity.DURATION, 0.01, 86_400);
    Optional<SensorLoop> sensor = SensorReader.sensor(table, channel);
    ProbeSpec spec =
        new ProbeSpec(
            channel,
            source,
            addresses.address(table, source),
            unit(table, channel, sensor, source.isPresent()),
            scale(table),
            table.text("time"),
            intervalS,
            sensor);
    specs.add(spec);
    analysed.put(channel, new Probe(uncertainty(table, channel.quantity()), intervalS));
  }

  private static Channel channel(TomlTable table) {
    String id = table.needText("channel", "water-in");
    return Channel.find(id)
        .orElseThrow(
            () ->
                table.mistake(
                    "channel",
                    "no channel is called \""
                        + id
                        + "\""
                        + NearestWord.advice(
                            id, Arrays.stream(Channel.values()).map(Channel::id).toList())));
  }

  private static Unit unit(
      TomlTable table, Channel channel, Optional<SensorLoop> sensor, boolean hasSource) {
    Quantity sent = sensor.map(SensorLoop::raw).orElse(channel.quantity());
    Optional<String> text = table.text("unit");
    if (text.isPresent()) {
      try {
        return Unit.of(sent, text.get());
      } catch (UnknownUnitException e) {
        throw table.mistake("unit", "channel " + channel + ": " + e.getMessage());
      }
    }
    if (sensor.isPresent()) {
      return SensorReader.usualUnit(sensor.get());
    }
    if (hasSource && channel.quantity() != Quantity.STATE) {
      throw table.mistake(
          "no unit for channel "
              + channel
              + "; add unit = \""
              + channel.storedUnit().code()
              + "\"");
    }
    return channel.storedUnit();
  }

  private static double scale(TomlTable table) {
    double scale = table.number("scale").orElse(1);
    if (scale == 0) {
      throw table.mistake("scale", "scale is 0, which makes every reading 0; leave it out");
    }
    return scale;
  }

  private static ReadingUncertainty uncertainty(TomlTable table, Quantity quantity) {
    Optional<String> text = table.text("uncertainty");
    if (text.isEmpty()) {
      return new ReadingUncertainty.Unstated();
    }
    // "2 %" of a humidity means points, as sensor makers state it; of all else a share.
    boolean share = text.get().strip().endsWith("%") && quantity != Quantity.RATIO;
    Quantity stated =
        share
            ? Quantity.RATIO
            : quantity == Quantity.TEMPERATURE ? Quantity.TEMPERATURE_DIFFERENCE : quantity;
    double value;
    try {
      value = Measure.parse(stated, text.get());
    } catch (IllegalArgumentException e) {
      throw table.mistake("uncertainty", "uncertainty: " + e.getMessage());
    }
    if (!(value >= 0) || Double.isInfinite(value) || (share && value > 1)) {
      throw table.mistake("uncertainty", "uncertainty must be zero or more, and at most 100 %");
    }
    return share ? new ReadingUncertainty.Relative(value) : new ReadingUncertainty.Absolute(value);
  }
}
