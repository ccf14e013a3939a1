package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.scenario.OpenMeasurements;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Heat against other people's measurements: a chiller bench whose evaporator and compressor are an
 * independent witness of the condenser's heat, and an electric heater in a water loop.
 */
class HeatOfOpenMeasurementsTest {
  /** Steady state of the bench: this long after a start. */
  private static final int SETTLED_MINUTES = 30;

  /** Witness: glycol properties from memory, its flow and temperatures; ours, 3 % at k = 2. */
  private static final double WITNESS_SHARE = 0.03;

  @ParameterizedTest
  @ValueSource(strings = {"day-a", "day-b", "day-c"})
  void agreesWithEvaporatorAndCompressorOfTheBench(String day) {
    Findings findings =
        Analysis.of(OpenMeasurements.recording("bench/" + day + ".csv", benchRig()));
    double[] heatW = trace(findings, Trace.Kind.HEAT);
    List<String[]> witness = OpenMeasurements.rows("bench/" + day + ".witness.csv");
    double witnessJ = 0;
    double waterJ = 0;
    int running = 0;
    for (int i = 1; i < witness.size(); i++) {
      String[] row = witness.get(i);
      running = row[3].equals("1") ? running + 1 : 0;
      int at = (int) ((OpenMeasurements.timeMs(row) - findings.startMs()) / 60_000);
      if (running > SETTLED_MINUTES && at < heatW.length) {
        witnessJ += (Double.parseDouble(row[1]) + Double.parseDouble(row[2])) * 60;
        waterJ += heatW[at] * 60;
      }
    }
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    double share = delivered.expanded() / delivered.value();
    System.out.printf(
        Locale.ROOT,
        "%s: water %.2f kWh, witness %.2f kWh, ratio %.4f, stated U %.2f %%; delivered %.2f kWh,"
            + " COP %.3f, zero %s%n",
        day,
        waterJ / 3.6e6,
        witnessJ / 3.6e6,
        waterJ / witnessJ,
        share * 100,
        delivered.value() / 3.6e6,
        findings.heat().cop().orElseThrow().value(),
        findings.zero());
    assertThat(Math.abs(waterJ / witnessJ - 1)).isLessThan(Math.hypot(share, WITNESS_SHARE));
    // Water stands whenever this bench rests: there is nothing to take a zero from.
    assertThat(findings.zero()).isEmpty();
    assertThat(findings.missing()).anyMatch(sentence -> sentence.startsWith("zero of the pair"));
  }

  @Test
  void agreesWithTheElectricHeaterOfTheSandBox() {
    Rig rig = Rigs.withProbe(Rigs.bare(), Channel.WATER_IN, new ReadingUncertainty.Absolute(0.05));
    rig = Rigs.withProbe(rig, Channel.WATER_OUT, new ReadingUncertainty.Absolute(0.05));
    rig = Rigs.withProbe(rig, Channel.FLOW_HEATER, new ReadingUncertainty.Relative(0.01));
    Findings findings = Analysis.of(OpenMeasurements.recording("sandbox/sandbox.csv", rig));
    double heaterJ = 0;
    List<String[]> witness = OpenMeasurements.rows("sandbox/sandbox.witness.csv");
    for (int i = 1; i + 1 < witness.size(); i++) {
      double seconds =
          (OpenMeasurements.timeMs(witness.get(i + 1)) - OpenMeasurements.timeMs(witness.get(i)))
              / 1e3;
      heaterJ += Double.parseDouble(witness.get(i)[1]) * seconds;
    }
    Estimate delivered = findings.heat().deliveredJ().orElseThrow();
    System.out.printf(
        Locale.ROOT,
        "sand box: water %.2f +- %.2f kWh, heater %.2f kWh, ratio %.4f%n",
        delivered.value() / 3.6e6,
        delivered.expanded() / 3.6e6,
        heaterJ / 3.6e6,
        delivered.value() / heaterJ);
    // Both figures as the measurements' own notes give them: 54.4 and 54.7 kWh.
    assertThat(heaterJ / 3.6e6).isCloseTo(54.7, within(0.15));
    assertThat(delivered.value() / 3.6e6).isCloseTo(54.4, within(0.35));
    assertThat(Math.abs(delivered.value() - heaterJ)).isLessThan(delivered.expanded());
    assertThat(findings.heat().cop()).isEmpty();
  }

  private static double[] trace(Findings findings, Trace.Kind kind) {
    return findings.traces().stream()
        .filter(trace -> trace.kind() == kind)
        .findFirst()
        .orElseThrow()
        .values();
  }

  /** Uncertainties as the rig beside the measurements states them. */
  private static Rig benchRig() {
    Rig rig =
        Rigs.withProbe(Rigs.bare(), Channel.WATER_IN, new ReadingUncertainty.Absolute(0.105 / 1.8));
    rig = Rigs.withProbe(rig, Channel.WATER_OUT, new ReadingUncertainty.Absolute(0.1 / 1.8));
    rig =
        Rigs.withProbe(
            rig,
            Channel.FLOW_HEATER,
            new ReadingUncertainty.Absolute(Measure.parse(Quantity.FLOW, "0.27 gal/min")));
    return Rigs.withProbe(rig, Channel.POWER, new ReadingUncertainty.Relative(0.005));
  }
}
