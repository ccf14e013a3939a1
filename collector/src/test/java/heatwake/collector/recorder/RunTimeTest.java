package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.clock.ClockStep;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** The run's time while the machine's clock is set about. */
class RunTimeTest {
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  private final SettableClock clock = new SettableClock(START);
  private final RunTime time = new RunTime(clock);

  @Test
  void followsTheClock() {
    clock.passMs(1000);
    assertThat(time.nowMs()).isEqualTo(START + 1000);
    assertThat(time.takeSteps()).isEmpty();
  }

  @Test
  void followsAClockThatIsDisciplined() {
    for (int i = 0; i < 1000; i++) {
      clock.passMs(1000);
      clock.stepMs(-1);
      time.nowMs();
    }
    assertThat(time.nowMs()).isEqualTo(START + 999_000);
    assertThat(time.takeSteps()).isEmpty();
  }

  @Test
  void followsAStepForward() {
    clock.passMs(1000);
    clock.stepMs(86_400_000);
    assertThat(time.nowMs()).isEqualTo(START + 86_401_000);
    assertThat(time.takeSteps()).containsExactly(new ClockStep(START + 86_401_000, 86_400_000, 0));
    assertThat(time.takeSteps()).isEmpty();
  }

  @Test
  void keepsItsOwnTimeAfterAStepBackUntilTheClockIsSetForwardAgain() {
    clock.passMs(1000);
    time.nowMs();
    clock.stepMs(-3_600_000);
    clock.passMs(1000);
    assertThat(time.nowMs()).isEqualTo(START + 2000);
    clock.passMs(1000);
    assertThat(time.nowMs()).isEqualTo(START + 3000);
    assertThat(time.takeSteps())
        .containsExactly(new ClockStep(START + 2000, -3_600_000, 3_600_000));

    clock.stepMs(3_600_000);
    clock.passMs(1000);
    assertThat(time.nowMs()).isEqualTo(START + 4000);
    assertThat(time.takeSteps()).containsExactly(new ClockStep(START + 4000, 3_600_000, 0));
  }

  @Test
  void neverRunsBackwardsWhenTheClockCreepsBack() {
    long before = time.nowMs();
    clock.stepMs(-300);
    assertThat(time.nowMs()).isEqualTo(before);
  }
}
