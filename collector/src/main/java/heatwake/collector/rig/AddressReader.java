package heatwake.collector.rig;

import com.fasterxml.jackson.core.JsonPointer;
import heatwake.collector.rig.ProbeSpec.Address;
import heatwake.collector.rig.ProbeSpec.RegisterType;
import heatwake.collector.rig.ProbeSpec.Table;
import heatwake.collector.rig.ProbeSpec.WordOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads where in its source a probe's readings are found: a field, a topic or a register. */
final class AddressReader {
  private static final int LONGEST_TOPIC = 1024;
  private static final List<String> FIELD_KEYS = List.of("field", "time");
  private static final List<String> TOPIC_KEYS = List.of("topic", "field", "time");
  private static final List<String> REGISTER_KEYS =
      List.of("unit-id", "register", "type", "word-order", "table");

  /** The keys of all kinds of source. */
  static final List<String> KEYS = keys();

  private final List<SourceSpec> sources;
  private final RigReader.UnknownSource unknownSource;

  AddressReader(List<SourceSpec> sources, RigReader.UnknownSource unknownSource) {
    this.sources = sources;
    this.unknownSource = unknownSource;
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>(TOPIC_KEYS);
    keys.addAll(REGISTER_KEYS);
    return List.copyOf(keys);
  }

  /**
   * The address of a probe, none where it has no source.
   *
   * @throws heatwake.collector.mistake.MistakeException naming file, line and mend
   */
  Address address(TomlTable table, Optional<String> source) {
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
      if (table.has(key) && !allowed.contains(key)) {
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
