package heatwake.collector.rig;

import com.fasterxml.jackson.core.JsonPointer;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.quantity.UnknownUnitException;
import heatwake.analysis.sensor.SensorLoop;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.collector.mistake.NearestWord;
import heatwake.collector.rig.ProbeSpec.Address;
import heatwake.collector.rig.ProbeSpec.RegisterType;
import heatwake.collector.rig.ProbeSpec.Table;
import heatwake.collector.rig.ProbeSpec.WordOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a rig says is clipped where, probe by probe. */
final class ProbeReader {
  private static final int LONGEST_TOPIC = 1024;
  private static final List<String> FIELD_KEYS = List.of("field", "time");
  private static final List<String> TOPIC_KEYS = List.of("topic", "field", "time");
  private static final List<String> REGISTER_KEYS =
      List.of("unit-id", "register", "type", "word-order", "table");
  private static final List<String> PLAIN_KEYS =
      List.of("channel", "source", "unit", "scale", "uncertainty", "every", "sensor");
  private static final List<String> KEYS = keys();

  private final List<SourceSpec> sources;
  private final RigReader.UnknownSource unknownSource;
  private final Map<Channel, Probe> analysed = new LinkedHashMap<>();
  private final List<ProbeSpec> specs = new ArrayList<>();

  ProbeReader(List<SourceSpec> sources, RigReader.UnknownSource unknownSource) {
    this.sources = sources;
    this.unknownSource = unknownSource;
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>(PLAIN_KEYS);
    keys.add("topic");
    keys.addAll(FIELD_KEYS);
    keys.addAll(REGISTER_KEYS);
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
            address(table, source),
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

  private Address address(TomlTable table, Optional<String> source) {
    if (source.isEmpty()) {
      return new Address.None();
    }
    Optional<SourceSpec> spec =
        sources.stream().filter(one -> one.name().equals(source.get())).findFirst();
    if (spec.isEmpty()) {
      unknownSource.met(table, source.get(), sources);
      return new Address.None();
    }
    if (spec.get() instanceof SourceSpec.Serial serial) {
      refuseOthers(table, FIELD_KEYS, "serial");
      return field(table, serial);
    }
    if (spec.get() instanceof SourceSpec.Mqtt) {
      refuseOthers(table, TOPIC_KEYS, "mqtt");
      return topic(table);
    }
    refuseOthers(table, REGISTER_KEYS, "modbus-rtu");
    return register(table);
  }

  private static void refuseOthers(TomlTable table, List<String> allowed, String kind) {
    for (String key : KEYS) {
      if (table.has(key)
          && !PLAIN_KEYS.contains(key)
          && !SensorReader.keys().contains(key)
          && !allowed.contains(key)) {
        throw table.mistake(
            key,
            key
                + " does not go with a "
                + kind
                + " source; such a probe takes "
                + String.join(", ", allowed));
      }
    }
  }

  private static Address field(TomlTable table, SourceSpec.Serial source) {
    String example = source.lines() == SourceSpec.LineFormat.JSON ? "/t1" : "t1";
    String field = table.needText("field", example);
    if (source.lines() == SourceSpec.LineFormat.JSON) {
      checkPointer(table, "field");
      checkPointer(table, "time");
    }
    return new Address.Field(field);
  }

  private static Address topic(TomlTable table) {
    String filter = table.needText("topic", "site/water-in");
    if (filter.length() > LONGEST_TOPIC) {
      throw table.mistake(
          "topic",
          "topic has " + filter.length() + " characters; at most " + LONGEST_TOPIC + " are read");
    }
    if (!isTopicFilter(filter)) {
      throw table.mistake(
          "topic",
          "topic \""
              + filter
              + "\" is no MQTT topic filter: + stands for one whole level, # for all that follow"
              + " and only at the end");
    }
    checkPointer(table, "field");
    checkPointer(table, "time");
    if (table.has("time") && !table.has("field")) {
      throw table.mistake(
          "time", "time without field: a bare number carries no time; add field = \"/value\"");
    }
    return new Address.Topic(filter, table.text("field"));
  }

  /** MQTT 3.1.1, section 4.7.1. */
  private static boolean isTopicFilter(String filter) {
    String[] levels = filter.split("/", -1);
    for (int i = 0; i < levels.length; i++) {
      boolean wildcard = levels[i].contains("+") || levels[i].contains("#");
      if (wildcard && levels[i].length() > 1) {
        return false;
      }
      if (levels[i].equals("#") && i < levels.length - 1) {
        return false;
      }
    }
    return filter.indexOf('\0') < 0;
  }

  private static void checkPointer(TomlTable table, String key) {
    Optional<String> text = table.text(key);
    try {
      text.ifPresent(JsonPointer::compile);
    } catch (IllegalArgumentException e) {
      throw table.mistake(
          key,
          key + " must be a JSON pointer and begin with /, for example \"/" + text.get() + "\"");
    }
  }

  private static Address register(TomlTable table) {
    int number =
        table
            .whole("register", 0, 65_535)
            .orElseThrow(() -> table.mistake("no register in [probe]; add register = 12"));
    RegisterType type = table.choice("type", RegisterType.class).orElse(RegisterType.UINT16);
    if (number + type.words() > 65_536) {
      throw table.mistake("register", "register 65535 has no second word for " + type);
    }
    if (table.has("word-order") && type.words() == 1) {
      throw table.mistake("word-order", "word-order is for 32-bit types; leave it out");
    }
    return new Address.Register(
        table.whole("unit-id", 1, 247).orElse(1),
        table.choice("table", Table.class).orElse(Table.INPUT),
        number,
        type,
        table.choice("word-order", WordOrder.class).orElse(WordOrder.BIG));
  }
}
