package heatwake.dashboard.command;

import heatwake.collector.broker.BrokerConfig;
import heatwake.collector.broker.BrokerLimits;
import heatwake.collector.broker.BrokerUsers;
import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.mistake.MistakeException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.Stack;
import picocli.CommandLine.IParameterPreprocessor;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The options that start a broker for Wi-Fi probes along with the recorder. */
final class BrokerOption {
  private static final String USUAL_PORT = "1883";

  /** Where it listens; 0, which help does not name, is any port that is free. */
  static final class Port extends WholeNumber {
    Port() {
      super(0, 65_535, "a port is a number from 1 to 65535");
    }
  }

  @Option(
      names = "--broker",
      arity = "0..1",
      paramLabel = "PORT",
      preprocessor = PortOrUsual.class,
      converter = Port.class,
      description =
          "Runs an MQTT broker for Wi-Fi probes, port " + USUAL_PORT + " unless another is named.")
  private Integer port;

  @Option(
      names = "--broker-listen",
      paramLabel = "ADDRESS",
      converter = FilledIn.class,
      description =
          "Address it listens on: 127.0.0.1, only this machine, unless another is named; another"
              + " needs --broker-users.")
  private String address;

  @Option(
      names = "--broker-users",
      paramLabel = "FILE",
      description = "Who may connect to it; \"heatwake broker-user NAME\" makes a line of it.")
  private Path users;

  /**
   * Starts the broker, if one is asked for. It lets nobody but some clients in yet.
   *
   * @param first ids of those clients
   * @throws MistakeException if it may not or cannot listen
   */
  Optional<EmbeddedBroker> start(Set<String> first) {
    if (port == null) {
      if (address != null || users != null) {
        throw new MistakeException(
            (address != null ? "--broker-listen" : "--broker-users")
                + " says how the broker is to work, but there is none; add --broker");
      }
      return Optional.empty();
    }
    return Optional.of(
        EmbeddedBroker.startFor(
            first,
            new BrokerConfig(
                address == null ? BrokerConfig.LOOPBACK : address,
                port,
                Optional.ofNullable(users).map(BrokerUsers::read),
                BrokerLimits.SITE)));
  }

  /** The file of those who may connect, if one is named. */
  Optional<Path> usersFile() {
    return Optional.ofNullable(users);
  }

  /** Takes the word after {@code --broker} for a port only if it is a number. */
  @SuppressWarnings("JdkObsolete") // Stack is the library's.
  static final class PortOrUsual implements IParameterPreprocessor {
    @Override
    public boolean preprocess(
        Stack<String> words, CommandSpec command, ArgSpec option, Map<String, Object> info) {
      boolean attached = "=".equals(info.get("separator"));
      if (!attached && (words.isEmpty() || !words.peek().matches("\\d+"))) {
        words.push(USUAL_PORT);
      }
      return false;
    }
  }
}
