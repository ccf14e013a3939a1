package heatwake.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** Heaters that never hold still, and heaters that never run for long. */
class SwingingHeaterTest {
  private static final double POOL_CEL = 26;
  private static final double RISE_K = 1.6;
  private static final double POWER_W = 2700;

  /** Two swings that do not fit together: speed steps of 7 min, valve hunting of 4.3 min. */
  private static double swing(double atS) {
    return 1
        + 0.2 * Math.sin(2 * Math.PI * atS / 420)
        + 0.12 * Math.sin(2 * Math.PI * atS / 258 + 1);
  }

  /** A speed that climbs for half an hour. */
  private static double growth(double atS) {
    return 0.3 + 0.7 * Math.min(1, Math.max(0, (atS - 1200) / 1800));
  }

  @Test
  void aLongEvenlySwingingStretchHasSteadyFigures() {
    RunBuilder run = RunBuilder.run().every(5).circulating(15).heating(10);
    run.change(Channel.WATER_OUT, (atS, cel) -> POOL_CEL + RISE_K * swing(atS));
    run.change(Channel.POWER, (atS, watt) -> POWER_W * swing(atS));
    Findings findings = Analysis.of(run.heating(120).recording());

    double minutes = 0;
    for (SteadySpan span : findings.steady()) {
      double fromS = (span.startMs() - findings.startMs()) / 1e3;
      double toS = (span.endMs() - findings.startMs()) / 1e3;
      minutes += (toS - fromS) / 60;
      if (fromS > 1700) {
        // 150 L/min, 4.166 MJ/(m3 K) at 26 Cel (EN 1434-1): 2.5e-3 m3/s times the rise.
        double trueW = 2.5e-3 * 4.166e6 * RISE_K * mean(fromS, toS);
        assertThat(span.heatW())
            .hasValueSatisfying(
                heat ->
                    assertThat(heat.value() - trueW).isBetween(-heat.expanded(), heat.expanded()));
        double trueCop = 2.5e-3 * 4.166e6 * RISE_K / POWER_W;
        assertThat(span.cop())
            .hasValueSatisfying(
                cop ->
                    assertThat(cop.value() - trueCop).isBetween(-cop.expanded(), cop.expanded()));
        assertThat(span.expectedHeatW()).isPresent();
      }
    }
    assertThat(minutes).isGreaterThan(60);
    assertThat(findings.missing()).noneMatch(text -> text.startsWith("steady figures"));
  }

  @Test
  void whatGoesOnGrowingIsNotSteady() {
    // A tenth an hour and more of a swing is no drift; two thirds in half an hour are.
    RunBuilder run = RunBuilder.run().every(5).circulating(15).heating(5);
    run.change(Channel.WATER_OUT, (atS, cel) -> POOL_CEL + RISE_K * growth(atS));
    run.change(Channel.POWER, (atS, watt) -> POWER_W * growth(atS));
    Findings findings = Analysis.of(run.heating(30).recording());

    assertThat(findings.steady()).isEmpty();
    assertThat(findings.missing())
        .anyMatch(text -> text.startsWith("steady figures: none, heat, power, entering water"));
  }

  @Test
  void runsTooShortSayWhatWouldHelp() {
    RunBuilder run = RunBuilder.run().every(5).circulating(12);
    for (int cycle = 0; cycle < 3; cycle++) {
      run.heating(6).circulating(8);
    }
    Findings findings = Analysis.of(run.recording());

    assertThat(findings.steady()).isEmpty();
    assertThat(findings.missing())
        .contains(
            "steady figures: none, the longest of 3 compressor runs lasted 6 min and some 11 min of"
                + " one run are needed; raise the set temperature by a degree so that it runs on");
  }

  @Test
  void aFirstRunThatStillGoesOnIsOnlyWaitedFor() {
    Findings findings =
        Analysis.of(RunBuilder.run().every(5).circulating(12).heating(5).recording());

    assertThat(findings.missing())
        .contains(
            "steady figures: none, the compressor ran for 5 min and some 11 min of one run are"
                + " needed");
  }

  private static double mean(double fromS, double toS) {
    double sum = 0;
    int count = 0;
    for (double atS = fromS; atS <= toS; atS += 5) {
      sum += swing(atS);
      count++;
    }
    return sum / count;
  }
}
