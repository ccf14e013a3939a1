package heatwake.collector.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * How senders give identifiers: an identifier may be given again once the message under it is
 * acknowledged (MQTT 3.1.1, 2.3.1); which one is next is theirs to say.
 */
class KnownMessagesTest {
  private static final int IDENTIFIERS = 65_535;

  private final KnownMessages known = new KnownMessages(1024);

  private void comes(long identifier, long digest) {
    known.add(known.count(), identifier, digest);
  }

  @Test
  void ofASenderThatCountsUpTheLatestAreTold() {
    for (int i = 0; i < 100_000; i++) {
      comes(1 + i % IDENTIFIERS, i % 3);
    }
    assertThat(known.tells(1 + 99_999 % IDENTIFIERS, 99_999 % 3)).isTrue();
    assertThat(known.tells(1 + 99_000 % IDENTIFIERS, 99_000 % 3)).isTrue();
    assertThat(known.tells(1 + 99_000 % IDENTIFIERS, 7)).as("another content").isFalse();
    assertThat(known.tells(1 + 98_000 % IDENTIFIERS, 98_000 % 3)).as("too long ago").isFalse();
    assertThat(known.tells(1 + 100_000 % IDENTIFIERS, 0)).as("never came").isFalse();
  }

  /** A sender that draws its identifiers: the last few are told, as far as no draw came as soon. */
  @Test
  void ofASenderThatDrawsLotsTheLastFewAreTold() {
    Random random = new Random(7);
    Deque<Integer> last = new ArrayDeque<>();
    for (int i = 0; i < 500; i++) {
      int identifier = 1 + random.nextInt(IDENTIFIERS);
      comes(identifier, 5);
      last.addFirst(identifier);
    }
    assertThat(last.stream().limit(5)).allMatch(identifier -> known.tells(identifier, 5));
  }

  @Test
  void ofASenderThatTakesTheLowestFreeNothingIsTold() {
    comes(1, 5);
    comes(1, 5);
    assertThat(known.tells(1, 5)).isFalse();
    // Several under way: 1 to 4, then whichever are free.
    for (int id : new int[] {1, 2, 3, 4, 2, 1, 4, 3}) {
      comes(id, 5);
    }
    assertThat(known.tells(3, 5)).isFalse();
  }

  /** A sender that begins at one again: what is nearer than that is still told. */
  @Test
  void aSenderThatOnceBeganAgainIsToldForTheMessagesSinceThen() {
    for (int session = 0; session < 2; session++) {
      for (int id = 1; id <= 50; id++) {
        comes(id, 5);
      }
    }
    assertThat(known.tells(50, 5)).isTrue();
    assertThat(known.tells(20, 5)).isTrue();
    assertThat(known.tells(1, 5)).as("as long ago as identifiers came back").isFalse();
  }

  @Test
  void ofTheSessionBeforeTheLastNothingIsTold() {
    comes(1, 5);
    known.sessionBegan();
    assertThat(known.tells(1, 5)).isTrue();
    known.sessionBegan();
    assertThat(known.tells(1, 5)).isFalse();
  }

  @Test
  void whatIsForgottenIsNotTold() {
    comes(1, 5);
    comes(1, 5);
    assertThat(known.forget()).isTrue();
    assertThat(known.forget()).isFalse();
    comes(1, 5);
    assertThat(known.tells(1, 5)).isTrue();
  }
}
