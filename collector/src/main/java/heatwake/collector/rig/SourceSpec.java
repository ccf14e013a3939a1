package heatwake.collector.rig;

import java.util.Optional;

/** Where readings come from, as the rig states it. */
public sealed interface SourceSpec {
  /** Name by which probes refer to it. */
  String name();

  /** The serial port that only it may have open, as the rig names it; empty for a network. */
  default Optional<String> ownPort() {
    return Optional.empty();
  }

  /**
   * What to say where another has the port that this one needs.
   *
   * @param other the other, as a person calls it
   */
  default String onOnePort(String other) {
    return "source \""
        + name()
        + "\" is on the same port as "
        + other
        + ", "
        + ownPort().orElse("none")
        + "; give each its own, or put their probes under one source";
  }

  /**
   * A serial line with one message a line.
   *
   * @param port device path or name
   * @param lines how a line is written
   */
  record Serial(String name, String port, int baud, LineFormat lines) implements SourceSpec {
    @Override
    public Optional<String> ownPort() {
      return Optional.of(port);
    }
  }

  /** How a line of text carries readings. */
  enum LineFormat {
    KEY_VALUE,
    CSV,
    JSON
  }

  /**
   * An MQTT broker.
   *
   * @param url {@code mqtt://host:port} or {@code mqtts://host:port}
   * @param user user name, if the broker wants one
   * @param passwordEnv name of the environment variable that holds the password
   * @param ca PEM file of the authority that signed the broker's certificate, if it is not a public
   *     one
   * @param version 3 (MQTT 3.1.1) or 5
   */
  record Mqtt(
      String name,
      String url,
      Optional<String> user,
      Optional<String> passwordEnv,
      Optional<String> ca,
      int version)
      implements SourceSpec {}

  /**
   * A Modbus RTU bus.
   *
   * @param port device path or name
   * @param parity none, even or odd
   */
  record ModbusRtu(String name, String port, int baud, Parity parity, int stopBits)
      implements SourceSpec {
    @Override
    public Optional<String> ownPort() {
      return Optional.of(port);
    }
  }

  /** Parity of a serial line. */
  enum Parity {
    NONE,
    EVEN,
    ODD
  }
}
