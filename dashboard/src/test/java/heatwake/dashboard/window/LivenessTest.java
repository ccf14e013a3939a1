package heatwake.dashboard.window;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.RunHeading;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class LivenessTest {
  private static final long CLOCK = 1_800_000_000_000L;

  private final GrowthClock growth = new GrowthClock();

  @Test
  void aRunThatGrowsIsLive() {
    growth.seen(open(), CLOCK - 2000, CLOCK);
    Liveness live = growth.seen(open(), CLOCK - 1000, CLOCK + 3000);
    assertThat(live.isRecording()).isTrue();
    assertThat(live.isSilent()).isFalse();
    assertThat(live.nowMs()).isEqualTo(CLOCK - 1000);
  }

  @Test
  void oneThatStoppedGrowingIsSilent() {
    growth.seen(open(), CLOCK, CLOCK);
    Liveness live = growth.seen(open(), CLOCK, CLOCK + 90_000);
    assertThat(live.isSilent()).isTrue();
    assertThat(live.nowMs()).isEqualTo(CLOCK + 90_000);
  }

  @Test
  void atFirstSightAnOldReadingOfThisClockIsOld() {
    assertThat(growth.seen(open(), CLOCK - 3_600_000, CLOCK).isSilent()).isTrue();
  }

  @Test
  void readingsOfAnotherClockAreJudgedByTheirGrowth() {
    long replayed = CLOCK - 400L * 24 * 3_600_000;
    assertThat(growth.seen(open(), replayed, CLOCK).isSilent()).isFalse();
    assertThat(growth.seen(open(), replayed + 60_000, CLOCK + 1000).nowMs())
        .isEqualTo(replayed + 60_000);
    assertThat(growth.seen(open(), replayed + 60_000, CLOCK + 100_000).isSilent()).isTrue();
  }

  @Test
  void aRunThatIsOverHasNoPresent() {
    RunHeading ended = new RunHeading(1, "Heron Lane", 0, OptionalLong.of(CLOCK));
    Liveness over = growth.seen(ended, CLOCK, CLOCK + 1_000_000);
    assertThat(over.isRecording()).isFalse();
    assertThat(over.isSilent()).isFalse();
    assertThat(over.nowMs()).isEqualTo(CLOCK);
  }

  private static RunHeading open() {
    return new RunHeading(1, "Heron Lane", 0, OptionalLong.empty());
  }
}
