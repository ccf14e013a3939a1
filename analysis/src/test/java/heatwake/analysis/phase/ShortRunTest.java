package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Draws of a minute every five under a fan that runs on, by two thermometers that show nothing of
 * them. The nameplate's power is 2750 W. A stalled motor draws three to six times its current and
 * trips within some ten seconds (common practice).
 */
class ShortRunTest {
  private static Findings draws(double seconds, double watts, double everyS) {
    return Analysis.of(
        RunBuilder.run()
            .only(Channel.POWER, Channel.WATER_IN, Channel.WATER_OUT)
            .every(everyS)
            .circulating(10)
            .change(Channel.POWER, (s, v) -> s % 300 < seconds ? watts + s % 300 : v)
            .fan(180)
            .recording());
  }

  @ParameterizedTest
  @CsvSource({"20, 2000, 1", "24, 2200, 5", "45, 2000, 2", "60, 2600, 5", "75, 1700, 10"})
  void aProtectionThatEndsEachRunIsShortCycling(double seconds, double watts, double everyS) {
    var findings = draws(seconds, watts, everyS);
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("short-cycling");
    assertThat(findings.cycles()).hasSize(36);
  }

  @ParameterizedTest
  @CsvSource({
    "6, 9000, 1",
    "20, 9000, 2",
    "40, 9000, 2",
    "3, 900, 1",
    "12, 2600, 1",
    "10, 2600, 10"
  })
  void aMotorThatStallsIsNone(double seconds, double watts, double everyS) {
    var findings = draws(seconds, watts, everyS);
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("no-compressor");
    assertThat(findings.cycles()).isEmpty();
  }

  /** A reading or two of a draw do not tell whether it was held. */
  @Test
  void seldomReadingsDoNotTell() {
    assertThat(draws(45, 2000, 30).cycles()).isEmpty();
  }
}
