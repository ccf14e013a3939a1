package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** What a sender of one message at a time does to the time of gathering, and others do not. */
class GatherTimeTest {
  private static final long FIRST_NS = 1_000_000_000_000L;

  private final GatherTime time = new GatherTime();
  private long nowNs = FIRST_NS;

  private long ms() {
    return TimeUnit.NANOSECONDS.toMillis(time.ns());
  }

  /** A delivery so long after somebody was told, its commit, and what the time is then. */
  private long afterOneThatCame(long laterMs) {
    time.told(nowNs);
    nowNs += TimeUnit.MILLISECONDS.toNanos(laterMs);
    time.came(nowNs);
    nowNs += time.ns();
    return ms();
  }

  @Test
  void aSenderThatWaitsIsHeldUpLessAndLess() {
    assertThat(ms()).isEqualTo(400);
    assertThat(afterOneThatCame(10)).isEqualTo(200);
    assertThat(afterOneThatCame(10)).isEqualTo(100);
    assertThat(afterOneThatCame(10)).isEqualTo(50);
    assertThat(afterOneThatCame(10)).as("the disk is spared").isEqualTo(50);
  }

  @Test
  void whenNobodyWaitsItIsAsBefore() {
    assertThat(afterOneThatCame(1000)).isEqualTo(400);
    assertThat(afterOneThatCame(10)).isEqualTo(200);
    assertThat(afterOneThatCame(600)).isEqualTo(400);
    assertThat(afterOneThatCame(600)).isEqualTo(400);
  }

  /** Only the first one that comes can have waited for what was told. */
  @Test
  void othersThatComeSoonAfterHaveNotWaited() {
    time.told(nowNs);
    time.came(nowNs + TimeUnit.MILLISECONDS.toNanos(500));
    time.came(nowNs + TimeUnit.MILLISECONDS.toNanos(505));
    assertThat(ms()).isEqualTo(400);
  }
}
