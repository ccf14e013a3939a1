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
            "electric energy: 40 min of the 163 min with the heater running are not known and left"
                + " out");
    // 120 min of 60 + 40 + 60 and 3 min after the stop (by hand).
    assertThat(findings.heat().electricKnown()).isCloseTo(123 / 163.0, within(0.01));
    assertThat(findings.heat().deliveredKnown()).isCloseTo(123 / 163.0, within(0.01));
    // Two hours at 2.7 kW were read, of two hours and forty minutes.
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(5.4, within(0.1));
  }

  /** Nobody knows whether it ran before it was found running. */
  @Test
  void oneThatBeginsAtRestIsSaidForItself() {
    Findings findings =
        Analysis.of(RunBuilder.run().circulating(20).nothingRecorded(40).heating(60).recording());
    assertThat(findings.missing())
        .contains(
            "heat and electric energy: for 40 min too little was read to tell what the heater did; it"
                + " ran when readings came back, and what it may have given before is not counted");
  }

  @Test
  void aShortOneIsBridgedAndNeedsNoSentence() {
    Findings findings = Analysis.of(silentFor(8).recording());
    assertThat(findings.missing()).noneMatch(text -> text.contains("too little was read"));
    assertThat(findings.heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(2.7 * 128 / 60, within(0.1));
  }

  /**
   * An error that a pair keeps is in the heat of a short silence as it is in that around it: half
   * of the time bridged, the heat is known no better (GUM, JCGM 100:2008, 5.2: errors that are
   * alike add up).
   */
  @Test
  void aBridgedHeatHasThePairsErrorToo() {
    RunBuilder broken = RunBuilder.run().heating(10);
    for (int i = 0; i < 5; i++) {
      broken.nothingRecorded(8).heating(8);
    }
    double gappy = relative(broken);
    double whole = relative(RunBuilder.run().heating(90));
    assertThat(gappy).isGreaterThanOrEqualTo(whole * 0.99);
    assertThat(gappy).isLessThan(whole * 1.5);
  }

  private static double relative(RunBuilder run) {
    var delivered = Analysis.of(run.recording()).heat().deliveredJ().orElseThrow();
    return delivered.standard() / delivered.value();
  }
}
