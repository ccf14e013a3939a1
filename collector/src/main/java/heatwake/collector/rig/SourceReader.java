package heatwake.collector.rig;

import heatwake.collector.rig.SourceSpec.LineFormat;
import heatwake.collector.rig.SourceSpec.Parity;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads where a rig says readings come from. */
final class SourceReader {
  private static final List<String> KINDS = List.of("serial", "mqtt", "modbus-rtu");
  private static final List<String> SERIAL_KEYS = List.of("name", "serial", "baud", "lines");
  private static final List<String> MQTT_KEYS =
      List.of("name", "mqtt", "user", "password-env", "ca", "version");
  private static final List<String> MODBUS_KEYS =
      List.of("name", "modbus-rtu", "baud", "parity", "stop-bits");
  private static final List<String> ANY_KEYS =
      List.of(
          "name",
          "serial",
          "lines",
          "mqtt",
          "user",
          "password-env",
          "ca",
          "version",
          "modbus-rtu",
          "baud",
          "parity",
          "stop-bits");
  private static final int DEFAULT_BAUD = 9600;
  private static final int GREATEST_BAUD = 4_000_000;
  private static final Pattern USB_IDENTITY =
      Pattern.compile("usb:[0-9A-Fa-f]{4}:[0-9A-Fa-f]{4}(:.+)?");
  private static final Pattern VARIABLE = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");

  private SourceReader() {}

  static List<SourceSpec> read(List<TomlTable> tables) {
    List<SourceSpec> sources = new ArrayList<>();
    for (TomlTable table : tables) {
      SourceSpec source = source(table);
      if (sources.stream().anyMatch(other -> other.name().equals(source.name()))) {
        throw table.mistake(
            "name", "a second source is called \"" + source.name() + "\"; give it another name");
      }
      for (SourceSpec other : sources) {
        if (other.ownPort().isPresent() && other.ownPort().equals(source.ownPort())) {
          throw table.mistake("name", source.onOnePort("source \"" + other.name() + "\""));
        }
      }
      sources.add(source);
    }
    return sources;
  }

  /** Refuses a probe whose source is not described. */
  static void refuseUnknown(TomlTable probe, String source, List<SourceSpec> sources) {
    List<String> names = sources.stream().map(SourceSpec::name).toList();
    throw probe.mistake(
        "source",
        "no [[source]] is called \""
            + source
            + "\"; "
            + (names.isEmpty()
                ? "add one with name = \"" + source + "\""
                : "the sources are " + String.join(", ", names)));
  }

  private static SourceSpec source(TomlTable table) {
    if (table.has("password")) {
      throw table.mistake(
          "password",
          "a password may not stand in a rig; put it in an environment variable and name that:"
              + " password-env = \"HEATWAKE_MQTT_PASSWORD\"");
    }
    List<String> kinds = KINDS.stream().filter(table::has).toList();
    if (kinds.size() != 1) {
      table.only(ANY_KEYS);
      throw kinds.isEmpty()
          ? table.mistake("a source of no kind; give it one of serial, mqtt or modbus-rtu")
          : table.mistake(
              kinds.get(1),
              "a source of two kinds ("
                  + String.join(" and ", kinds)
                  + "); make it two [[source]] tables");
    }
    return switch (kinds.get(0)) {
      case "serial" -> serial(table.only(SERIAL_KEYS));
      case "mqtt" -> mqtt(table.only(MQTT_KEYS));
      default -> modbus(table.only(MODBUS_KEYS));
    };
  }

  private static SourceSpec serial(TomlTable table) {
    return new SourceSpec.Serial(
        table.needText("name", "clips"),
        port(table, "serial"),
        baud(table),
        table.choice("lines", LineFormat.class).orElse(LineFormat.KEY_VALUE));
  }

  private static SourceSpec mqtt(TomlTable table) {
    String name = table.needText("name", "wifi");
    String url = table.needText("mqtt", "mqtt://127.0.0.1:1883");
    checkUrl(table, url);
    Optional<String> user = table.text("user");
    Optional<String> passwordEnv = table.text("password-env");
    if (passwordEnv.isPresent() && !VARIABLE.matcher(passwordEnv.get()).matches()) {
      throw table.mistake(
          "password-env",
          "password-env must be the name of an environment variable, such as"
              + " \"HEATWAKE_MQTT_PASSWORD\", not the password itself");
    }
    if (passwordEnv.isPresent() && user.isEmpty()) {
      throw table.mistake("password-env", "password-env without user; add user = \"...\"");
    }
    Optional<String> ca = table.fileName("ca");
    if (ca.isPresent() && !url.startsWith("mqtts:")) {
      throw table.mistake("ca", "ca is for mqtts:// only; change the address or drop ca");
    }
    int version = table.whole("version", 3, 5).orElse(3);
    if (version == 4) {
      throw table.mistake("version", "version must be 3 (MQTT 3.1.1) or 5");
    }
    return new SourceSpec.Mqtt(name, url, user, passwordEnv, ca, version);
  }

  /** Never repeats the address in a message: it may hold a password. */
  private static void checkUrl(TomlTable table, String url) {
    URI uri;
    try {
      uri = new URI(url);
    } catch (URISyntaxException e) {
      throw table.mistake("mqtt", "mqtt is not an address; write mqtt://host:1883");
    }
    if (url.contains("@")) {
      throw table.mistake(
          "mqtt",
          "user or password inside the mqtt address; write user = \"...\" and password-env ="
              + " \"NAME_OF_A_VARIABLE\" instead");
    }
    if (!"mqtt".equals(uri.getScheme()) && !"mqtts".equals(uri.getScheme())) {
      throw table.mistake("mqtt", "mqtt must begin with mqtt:// or mqtts://");
    }
    boolean hostOnly =
        uri.getHost() != null
            && (uri.getPath() == null || uri.getPath().isEmpty() || uri.getPath().equals("/"))
            && uri.getQuery() == null
            && uri.getFragment() == null;
    if (!hostOnly || uri.getPort() == 0 || uri.getPort() > 65_535) {
      throw table.mistake("mqtt", "mqtt must be host and port only; write mqtt://host:1883");
    }
  }

  private static SourceSpec modbus(TomlTable table) {
    return new SourceSpec.ModbusRtu(
        table.needText("name", "meter"),
        port(table, "modbus-rtu"),
        baud(table),
        table.choice("parity", Parity.class).orElse(Parity.NONE),
        table.whole("stop-bits", 1, 2).orElse(1));
  }

  private static String port(TomlTable table, String key) {
    String port = table.needFileName(key, "/dev/ttyUSB0");
    if (port.startsWith("usb:") && !USB_IDENTITY.matcher(port).matches()) {
      throw table.mistake(
          key,
          key
              + " = \""
              + port
              + "\" names no USB adapter; write it as heatwake ports does, such as"
              + " \"usb:0403:6001\"");
    }
    return port;
  }

  private static int baud(TomlTable table) {
    return table.whole("baud", 50, GREATEST_BAUD).orElse(DEFAULT_BAUD);
  }
}
