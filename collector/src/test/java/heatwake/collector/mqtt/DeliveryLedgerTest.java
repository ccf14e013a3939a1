package heatwake.collector.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.probe.MessageMark;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a broker delivers again, by MQTT 3.1.1, 4.4 and 2.3.1, and how brokers give identifiers. */
class DeliveryLedgerTest {
  private final List<Integer> acknowledged = new ArrayList<>();
  private final List<MessageMark> stored = new ArrayList<>();
  private final BrokerLink link =
      new BrokerLink() {
        @Override
        public boolean connect() {
          return true;
        }

        @Override
        public void subscribe(List<String> topicFilters) {}

        @Override
        public void acknowledge(int packetId) {
          acknowledged.add(packetId);
        }

        @Override
        public void close() {}
      };

  private DeliveryLedger ledger = new DeliveryLedger("broker");

  private DeliveryLedger.Entry arrives(int packetId, String payload, boolean again) {
    return ledger.arrived(
        link,
        new ArrivedMessage(
            packetId, "heron/in", payload.getBytes(StandardCharsets.UTF_8), false, again));
  }

  private boolean isStored(int packetId, String payload, boolean again) {
    DeliveryLedger.Entry entry = arrives(packetId, payload, again);
    if (entry == null) {
      return false;
    }
    stored.add(entry.mark());
    entry.settle();
    return true;
  }

  /** Another process, which knows what is on disk. */
  private void restart() {
    ledger = new DeliveryLedger("broker");
    ledger.remember(stored);
  }

  @Test
  void whatIsOnDiskIsKnownAfterARestartAndAcknowledgedAtOnce() {
    assertThat(isStored(7, "20.5", false)).isTrue();
    assertThat(isStored(8, "20.5", false)).isTrue();
    restart();
    acknowledged.clear();
    assertThat(isStored(7, "20.5", true)).isFalse();
    assertThat(isStored(8, "20.5", true)).isFalse();
    assertThat(acknowledged).containsExactly(7, 8);
    assertThat(isStored(9, "20.5", true)).as("delivered before, but never stored").isTrue();
  }

  @Test
  void anotherContentOrNoMarkOfADuplicateIsAnotherMessage() {
    assertThat(isStored(7, "20.5", false)).isTrue();
    restart();
    assertThat(isStored(7, "20.6", true)).isTrue();
    restart();
    assertThat(isStored(7, "20.6", false)).isTrue();
  }

  /** Round the 65 535 identifiers: what came under one long ago is forgotten. */
  @Test
  void identifiersThatComeRoundAreNewMessages() {
    assertThat(isStored(1, "20.5", false)).isTrue();
    for (int id = 2; id <= 65_535; id++) {
      assertThat(isStored(id, "21.5", false)).isTrue();
    }
    stored.subList(0, stored.size() - MessageMark.KEPT).clear();
    restart();
    assertThat(isStored(1, "20.5", true)).isTrue();
    assertThat(isStored(65_535, "21.5", true)).isFalse();
    assertThat(isStored(65_000, "21.5", true)).isFalse();
  }

  /**
   * A broker that gives each message the lowest free identifier: the same content under the same
   * identifier may be a later message, which was under way when the recorder was killed.
   */
  @Test
  void whereIdentifiersAreUsedAgainAtOnceNothingIsTakenForStored() {
    assertThat(isStored(1, "20.5", false)).isTrue();
    assertThat(isStored(1, "20.5", false)).isTrue();
    assertThat(isStored(1, "20.5", true)).isTrue();
    restart();
    assertThat(isStored(1, "20.5", true)).isTrue();
  }

  /** Before we acknowledge a message its identifier is its own, whatever the broker's way. */
  @Test
  void whatWaitsForTheDiskIsKnownInAnyCase() {
    assertThat(isStored(1, "20.5", false)).isTrue();
    DeliveryLedger.Entry waiting = arrives(1, "20.5", false);
    assertThat(waiting).isNotNull();
    assertThat(arrives(1, "20.5", true)).isNull();
  }

  @Test
  void aSessionThatIsNewIsNotTheOneThatWasKnown() {
    assertThat(ledger.forget()).isFalse();
    assertThat(isStored(1, "20.5", false)).isTrue();
    assertThat(ledger.forget()).isTrue();
    assertThat(isStored(1, "20.5", true)).isTrue();
    assertThat(isStored(1, "20.5", true)).isFalse();
  }
}
