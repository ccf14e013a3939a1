package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Two probes of 0.1 K make a pair of 0.14 K; honest ones stay within 0.5 K. */
class ProbeOffsetTest {
  private final ProbeOffset rule = new ProbeOffset();

  private static Evidence zero(double offsetK) {
    Evidence readings = readings(RunBuilder.run().circulating(20).recording());
    Estimate offset = new Estimate(offsetK, 0.02);
    long start = readings.recording().startMs();
    ProbeZero zero =
        new ProbeZero(
            offset,
            Math.hypot(0.1, 0.1),
            Estimate.exact(0),
            List.of(new ProbeZero.Span(start, readings.recording().endMs(), offset)));
    return Evidence.of(
        readings.recording(),
        readings.timeline(),
        readings.phases(),
        readings.cycles(),
        readings.heat(),
        Optional.of(zero),
        PoolFigures.NONE,
        List.of(),
        List.of());
  }

  @Test
  void saysWhichReadsHigherAndThatItIsSubtracted() {
    var flag = onlyFlag(rule, zero(-0.8));
    assertThat(flag.evidence())
        .isEqualTo(
            "water-out reads 0.80 K below water-in with the compressor at rest; the two probes"
                + " explain 0.28 K. Subtracted from every rise");
    assertThat(flag.severity()).isEqualTo(Severity.INFO);
  }

  @Test
  void honestProbesAreClear() {
    assertClear(rule, zero(0.45));
    onlyFlag(rule, zero(0.55));
  }

  @Test
  void needsCirculatingWaterAtRest() {
    assertThat(reason(rule, readings(RunBuilder.run().heating(20).recording())))
        .isEqualTo(
            "water-in and water-out were not seen with water moving and the compressor at rest");
  }
}
