package heatwake.collector.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class UnitHealthTest {
  private static final long STEP_NANOS = Duration.ofMillis(100).toNanos();

  @Test
  void unitThatIsSilentIsAskedLessAndLessOftenAtMostAMinuteApart() {
    UnitHealth unit = new UnitHealth();
    List<Long> waitedS = new ArrayList<>();
    long nowNanos = Long.MAX_VALUE - STEP_NANOS; // The clock that nobody sets may wrap around.
    for (int i = 0; i < 8; i++) {
      assertThat(unit.mayBeAsked(nowNanos)).isTrue();
      unit.failed(nowNanos);
      long failedNanos = nowNanos;
      while (!unit.mayBeAsked(nowNanos)) {
        nowNanos += STEP_NANOS;
      }
      waitedS.add(Duration.ofNanos(nowNanos - failedNanos).toSeconds());
    }
    assertThat(waitedS).containsExactly(2L, 4L, 8L, 16L, 32L, 60L, 60L, 60L);
    assertThat(unit.isSilent()).isTrue();

    unit.answered();
    assertThat(unit.isSilent()).isFalse();
    assertThat(unit.mayBeAsked(nowNanos)).isTrue();
    unit.failed(nowNanos);
    assertThat(unit.mayBeAsked(nowNanos + Duration.ofSeconds(2).toNanos())).isTrue();
  }
}
