package heatwake.analysis.rule;

import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShortFanTest {
  private static List<ShortFan> in(RunBuilder run) {
    return ShortFan.in(readings(run.recording()));
  }

  @Test
  void leadsAStartOrFollowsAStop() {
    List<ShortFan> fans =
        in(RunBuilder.run().circulating(10).fan(1).heating(20).fan(1).circulating(5));
    assertThat(fans).extracting(ShortFan::leads).containsExactly(true, false);
  }

  @Test
  void aFanThatRunsForLongOrBesideNoRunIsNone() {
    assertThat(in(RunBuilder.run().circulating(10).fan(5).heating(20).circulating(5))).isEmpty();
    assertThat(in(RunBuilder.run().circulating(10).fan(1).circulating(10).heating(20))).isEmpty();
  }

  /** What comes after it is not known. */
  @Test
  void norIsOneThatTheEndOfTheRunCutsOff() {
    assertThat(in(RunBuilder.run().circulating(10).heating(20).fan(1))).isEmpty();
  }
}
