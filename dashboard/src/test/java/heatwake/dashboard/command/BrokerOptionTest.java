package heatwake.dashboard.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.mistake.MistakeException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

class BrokerOptionTest {
  private static final class Recording {
    @Mixin private BrokerOption broker;
    @Parameters private List<String> rigs;
  }

  private static Recording parse(String... words) {
    Recording recording = new Recording();
    new CommandLine(recording).parseArgs(words);
    return recording;
  }

  @Test
  void wordAfterItIsARigUnlessItIsANumber() {
    assertThat(parse("--broker", "site.toml").rigs).containsExactly("site.toml");
    assertThat(parse("--broker", "18830", "site.toml").rigs).containsExactly("site.toml");
    assertThat(parse("site.toml", "--broker").rigs).containsExactly("site.toml");
    assertThatThrownBy(() -> parse("--broker=site.toml"))
        .isInstanceOf(CommandLine.ParameterException.class);
  }

  @Test
  void listensOnLoopbackAndOnlyIfAsked() {
    assertThat(parse("site.toml").broker.start(Set.of())).isEmpty();
    Optional<EmbeddedBroker> broker = parse("--broker=0", "site.toml").broker.start(Set.of());
    try (EmbeddedBroker started = broker.orElseThrow()) {
      assertThat(started.url()).isEqualTo("mqtt://127.0.0.1:" + started.port());
    }
  }

  @Test
  void neverOpensToOthersWithoutUsers() {
    BrokerOption open = parse("--broker=0", "--broker-listen", "0.0.0.0", "site.toml").broker;
    assertThatThrownBy(() -> open.start(Set.of()))
        .isInstanceOf(MistakeException.class)
        .hasMessage(
            "--broker-listen 0.0.0.0 lets other machines in, so it needs --broker-users FILE;"
                + " heatwake broker-user NAME makes a line of it");
  }

  @Test
  void optionsWithoutABrokerAreAMistake() {
    BrokerOption lost = parse("--broker-users", "users", "site.toml").broker;
    assertThatThrownBy(() -> lost.start(Set.of()))
        .isInstanceOf(MistakeException.class)
        .hasMessageContaining("add --broker");
  }
}
