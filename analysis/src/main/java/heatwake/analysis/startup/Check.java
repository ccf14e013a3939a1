package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.rule.Evidence;
import java.util.OptionalLong;

/** One line of the start-up list. Stateless; its limits and sentences stand in its file. */
interface Check {
  StartupCheck.Item item();

  StartupCheck look(Evidence evidence);

  default StartupCheck pass(long atMs, String text) {
    return new StartupCheck(item(), StartupCheck.Result.PASS, text, OptionalLong.of(atMs));
  }

  default StartupCheck fail(long atMs, String text) {
    return new StartupCheck(item(), StartupCheck.Result.FAIL, text, OptionalLong.of(atMs));
  }

  default StartupCheck notSeen(String text) {
    return new StartupCheck(item(), StartupCheck.Result.NOT_SEEN, text, OptionalLong.empty());
  }

  default StartupCheck notMeasured(String text) {
    return new StartupCheck(item(), StartupCheck.Result.NOT_MEASURED, text, OptionalLong.empty());
  }
}
