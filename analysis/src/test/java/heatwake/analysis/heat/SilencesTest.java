package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** What is said of a silence between two times at which the heater was seen running. */
class SilencesTest {
  private static RunBuilder silentFor(double minutes) {
    return RunBuilder.run()
        .circulating(12)
        .heating(60)
        .nothingRecorded(minutes)
        .heating(60)
        .circulating(10);
  }

  @Test
  void aLongSilenceIsSaidWithItsLength() {
    Findings findings = Analysis.of(silentFor(40).recording());
    assertThat(findings.missing())
        .contains(
            "heat and electric energy: for 40 min too little was read to tell what the heater did; it"
                + " ran when readings came back, and what it may have given before is not counted");
    // Two hours at 2.7 kW were read, of two hours and forty minutes.
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(5.4, within(0.1));
  }

  @Test
  void aShortOneIsBridgedAndNeedsNoSentence() {
    Findings findings = Analysis.of(silentFor(8).recording());
    assertThat(findings.missing()).noneMatch(text -> text.contains("too little was read"));
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2.7 * 128 / 60, within(0.1));
  }
}
