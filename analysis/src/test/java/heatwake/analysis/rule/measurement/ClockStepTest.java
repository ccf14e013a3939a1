package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.EventKind;
import org.junit.jupiter.api.Test;

class ClockStepTest {
  private final ClockStep rule = new ClockStep();

  @Test
  void repeatsWhatTheRecorderNoted() {
    RunBuilder run =
        RunBuilder.run()
            .heating(5)
            .event(EventKind.CLOCK_STEP, "clock", "wall clock moved forward by 10544.2 s")
            .heating(5);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("The clock jumped once: wall clock moved forward by 2 h 55 min 44 s");
  }

  @Test
  void otherEventsAreClear() {
    RunBuilder run = RunBuilder.run().event(EventKind.DUPLICATE, "power", "sent twice").heating(5);
    assertClear(rule, readings(run.recording()));
  }
}
