package heatwake.analysis.startup;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.StartupCheck.Item;
import heatwake.analysis.finding.StartupCheck.Result;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;

/** A start-up as a technician goes through it, and what one item of the list says of it. */
final class StartUp {
  private StartUp() {}

  /** Pump on, wait, heat for an hour, pump off and on again, heat to the set temperature. */
  static RunBuilder wholeStartUp() {
    return RunBuilder.run()
        .off(12)
        .circulating(12)
        .fan(0.5)
        .heating(60)
        .set(Channel.FLOW_HEATER, 0)
        .set(Channel.FLOW_SWITCH, 0)
        .set(Channel.PUMP_ON, 0)
        .heating(0.1)
        .free(Channel.FLOW_HEATER)
        .free(Channel.FLOW_SWITCH)
        .free(Channel.PUMP_ON)
        .off(3)
        .circulating(4)
        .fan(0.5)
        .pool(27.9)
        .heating(20)
        .circulating(15);
  }

  static StartupCheck look(RunBuilder run, Item item) {
    List<StartupCheck> list = Analysis.of(run.recording()).startup();
    assertThat(list).extracting(StartupCheck::check).containsExactly(Item.values());
    return list.stream().filter(check -> check.check() == item).findFirst().orElseThrow();
  }

  static void assertSays(RunBuilder run, Item item, Result result, String evidence) {
    StartupCheck check = look(run, item);
    assertThat(check.evidence()).matches(evidence);
    assertThat(check.result()).isEqualTo(result);
    assertThat(check.atMs().isPresent()).isEqualTo(result == Result.PASS || result == Result.FAIL);
  }
}
