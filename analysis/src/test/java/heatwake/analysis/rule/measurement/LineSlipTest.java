package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** Clips of the refrigerant circuit that come off their lines. */
class LineSlipTest {
  private final ProbeSlipped rule = new ProbeSlipped();

  private static RunBuilder visit(double airCel) {
    return RunBuilder.run().air(airCel).circulating(10).heating(30);
  }

  @Test
  void aSuctionClipGoesToTheAirWhileTheCircuitStands() {
    RunBuilder run = visit(32).change(Channel.TEMP_SUCTION, (atS, cel) -> 31).heating(30);
    Flag flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.channels()).containsExactly(Channel.TEMP_SUCTION);
    assertThat(flag.evidence())
        .isEqualTo(
            "temp-suction went from 17.0 °C to 31.0 °C, towards the air at 32.0 °C, while the"
                + " pressures stood");
  }

  /** Its superheat of 18 K would else be a want of refrigerant. */
  @Test
  void whatItReadsInTheAirIsNoSuperheat() {
    Findings findings =
        Analysis.of(
            visit(32).change(Channel.TEMP_SUCTION, (atS, cel) -> 31).heating(60).recording());
    assertThat(findings.flags()).extracting(Flag::rule).containsExactly("probe-slipped");
    assertThat(findings.verdict().side()).isEqualTo(Side.MEASUREMENT);
    assertThat(findings.missing())
        .anyMatch(
            text -> text.startsWith("figures that rest on temp-suction: temp-suction was off"));
  }

  @Test
  void aLiquidClipGoesToTheAir() {
    RunBuilder run = visit(12).change(Channel.TEMP_LIQUID, (atS, cel) -> 14).heating(30);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.TEMP_LIQUID);
  }

  /** A valve that closes a little: hotter suction gas leaves the compressor hotter. */
  @Test
  void suctionGasThatTrulyGetsHotterIsClear() {
    assertClear(
        rule,
        readings(
            visit(32)
                .heatingAt(Channel.TEMP_SUCTION, 29)
                .heatingAt(Channel.TEMP_DISCHARGE, 79)
                .heating(30)
                .recording()));
  }

  @Test
  void aLineThatMovesWithItsPressureIsClear() {
    assertClear(
        rule,
        readings(
            visit(32)
                .heatingAt(Channel.TEMP_SUCTION, 29)
                .heatingAt(Channel.PRESSURE_SUCTION, 780)
                .heating(30)
                .recording()));
    assertClear(
        rule,
        readings(
            visit(12)
                .heatingAt(Channel.TEMP_LIQUID, 24)
                .heatingAt(Channel.PRESSURE_DISCHARGE, 1900)
                .heating(30)
                .recording()));
  }

  /** R-410A at 2.3 MPa gauge condenses at 39.7 Cel (Lemmon 2003, dew line). */
  @Test
  void aDischargeLineColderThanCondensingCannotBe() {
    assertThat(
            onlyFlag(
                    rule,
                    readings(
                        RunBuilder.run()
                            .circulating(10)
                            .heatingAt(Channel.TEMP_DISCHARGE, 31)
                            .heating(60)
                            .recording()))
                .evidence())
        .matches(
            "temp-discharge reads 31\\.0 °C, under the condensing temperature of 39\\.7 °C: no gas"
                + " that leaves a compressor is so cold");
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .circulating(10)
                .heatingAt(Channel.TEMP_DISCHARGE, 38)
                .heating(60)
                .recording()));
  }

  @Test
  void liquidColderThanTheWaterThatCoolsItCannotBe() {
    assertThat(
            onlyFlag(
                    rule,
                    readings(
                        RunBuilder.run()
                            .air(10)
                            .circulating(10)
                            .heatingAt(Channel.TEMP_LIQUID, 15)
                            .heating(60)
                            .recording()))
                .evidence())
        .isEqualTo(
            "temp-liquid reads 15.0 °C, under the entering water of 26.0 °C: no liquid that leaves a"
                + " condenser is so cold");
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .air(10)
                .circulating(10)
                .heatingAt(Channel.TEMP_LIQUID, 23)
                .heating(60)
                .recording()));
  }

  /** The compressor turns and moves nothing: high side below the water, lines like the air. */
  @Test
  void linesOfACompressorThatMovesNothingAreClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .air(15)
                .circulating(10)
                .heatingAt(Channel.PRESSURE_DISCHARGE, 1200)
                .heatingAt(Channel.PRESSURE_SUCTION, 1150)
                .heatingAt(Channel.TEMP_DISCHARGE, 16)
                .heatingAt(Channel.TEMP_LIQUID, 16)
                .heatingAt(Channel.TEMP_SUCTION, 15)
                .heatingAt(Channel.WATER_OUT, 0.1)
                .heating(60)
                .recording()));
  }
}
