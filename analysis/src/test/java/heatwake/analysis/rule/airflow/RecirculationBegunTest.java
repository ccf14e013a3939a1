package heatwake.analysis.rule.airflow;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Cold air that comes back while the heater runs. Air stands at 24 Cel and leaves the coil 6 K
 * colder; no rest is seen. The least that counts is three times the 1 K that gusts and clouds shift
 * two air probes by (by hand).
 */
class RecirculationBegunTest {
  private final AirRecirculation rule = new AirRecirculation();

  /** A door is shut after an hour; leaving air follows entering air. */
  private static RunBuilder doorShut(double kelvin, double minutes) {
    return falls(RunBuilder.run().heating(60), kelvin).heating(minutes);
  }

  private static RunBuilder falls(RunBuilder run, double kelvin) {
    return run.set(Channel.AIR_IN, 24 - kelvin).set(Channel.AIR_OUT, 18 - kelvin);
  }

  @Test
  void saysSinceWhenAndWhatItWasBefore() {
    Flag flag = onlyFlag(rule, readings(doorShut(6, 150).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "The coil draws in air of 18.0 °C, 6.0 K below outdoor air, for 2.5 h since 2031-05-04"
                + " 19:00 UTC; in the running before that 0.0 K below it");
    assertThat(flag.side()).isEqualTo(Side.AIRFLOW);
  }

  @Test
  void countsFromThreeTimesWhatGustsAndCloudsDo() {
    onlyFlag(rule, readings(doorShut(3.3, 60).recording()));
    assertClear(rule, readings(doorShut(2.7, 60).recording()));
  }

  /** What both probes read wrong is the same before and after. */
  @Test
  void errorsOfTheProbesDropOut() {
    RunBuilder.Change reads2KTooCold = (atS, value) -> value - 2;
    assertThat(
            onlyFlag(
                    rule,
                    readings(
                        falls(
                                RunBuilder.run().change(Channel.AIR_IN, reads2KTooCold).heating(60),
                                4)
                            .heating(60)
                            .recording()))
                .evidence())
        .contains("6.0 K below outdoor air", "2.0 K below it");
  }

  @Test
  void hasToLastHalfAnHour() {
    onlyFlag(rule, readings(doorShut(6, 30).recording()));
    assertClear(rule, readings(doorShut(6, 20).recording()));
  }

  /** Wind that goes and comes, a quarter of an hour each. */
  @Test
  void gustsAreNone() {
    RunBuilder gusts = RunBuilder.run().heating(30);
    for (int i = 0; i < 8; i++) {
      falls(gusts, 5).heating(15);
      falls(gusts, 0).heating(15);
    }
    assertClear(rule, readings(gusts.recording()));
  }

  /** It was as cold for ten minutes half an hour ago. */
  @Test
  void whatWasMetWithinTheHourIsNoNews() {
    assertClear(
        rule,
        readings(
            falls(falls(falls(RunBuilder.run().heating(40), 5).heating(10), 0).heating(20), 5)
                .heating(60)
                .recording()));
  }

  /** Morning sun lifts the outdoor probe by 5 K within 40 min, while the air falls by 1 K. */
  @Test
  void sunOnTheOutdoorProbeIsNone() {
    RunBuilder morning =
        RunBuilder.run()
            .change(
                Channel.AIR_AMBIENT,
                (atS, value) -> value + 5 * Math.min(1, Math.max(0, atS - 3600) / 2400))
            .heating(60);
    assertClear(rule, readings(falls(morning, 1).heating(120).recording()));
  }

  /**
   * A front: the air falls by 10 K at once; the outdoor probe in its box comes after with a time
   * constant of 25 min, 10 exp(-30/25) = 3.0 K behind after half an hour (by hand).
   */
  @Test
  void aSlowOutdoorProbeInAFrontIsNone() {
    RunBuilder front =
        RunBuilder.run()
            .change(
                Channel.AIR_AMBIENT,
                (atS, value) ->
                    atS < 3600 ? value : value - 10 * (1 - Math.exp((3600 - atS) / 1500)))
            .heating(60);
    assertClear(rule, readings(falls(front, 10).heating(180).recording()));
  }

  /**
   * The same with sun that lifts the outdoor probe by 4 K before: afterwards it reads about as an
   * hour ago, but it has not stood.
   */
  @Test
  void sunBeforeAFrontDoesNotMakeTheOutdoorProbeStand() {
    RunBuilder front =
        RunBuilder.run()
            .change(
                Channel.AIR_AMBIENT,
                (atS, value) ->
                    value
                        + 4 * Math.min(1, Math.max(0, atS - 1800) / 1800)
                        - 10 * (atS < 3600 ? 0 : 1 - Math.exp((3600 - atS) / 1200)))
            .heating(60);
    assertClear(rule, readings(falls(front, 10).heating(180).recording()));
  }

  /** The inlet probe fell onto the cold coil: air, pressures and heat know nothing of it. */
  @Test
  void aProbeThatSlippedHasNoWitness() {
    assertClear(
        rule,
        readings(RunBuilder.run().heating(60).set(Channel.AIR_IN, 14).heating(120).recording()));
  }

  /**
   * Saturated R-410A at 7 Cel is at 0.99 MPa, at 2 Cel 0.85 MPa (tables, from memory); a coil that
   * follows its air by 5 K loses some 14 % of absolute pressure.
   */
  @Test
  void suctionPressureIsWitnessToo() {
    onlyFlag(
        rule,
        readings(
            RunBuilder.run()
                .without(Channel.AIR_OUT)
                .heating(60)
                .set(Channel.AIR_IN, 19)
                .heatingAt(Channel.PRESSURE_SUCTION, 950 - 0.14 * 1050)
                .heating(60)
                .recording()));
  }

  /** Heat falls by 2 % for each kelvin of 6 (common practice): the rise from 2.50 to 2.20 K. */
  @Test
  void heatIsWitnessToo() {
    assertThat(flagsOf(heatFalls(2.20, 2700).recording())).contains("air-recirculation");
    assertThat(flagsOf(heatFalls(2.48, 2700).recording())).doesNotContain("air-recirculation");
  }

  /** A compressor of variable speed holds its heat, for 12 % more power. */
  @Test
  void copIsWitnessWhereHeatIsHeld() {
    assertThat(flagsOf(heatFalls(2.50, 3020).recording())).contains("air-recirculation");
  }

  private static RunBuilder heatFalls(double riseK, double watts) {
    return RunBuilder.run()
        .without(Channel.AIR_OUT, Channel.PRESSURE_SUCTION)
        .heatingAt(Channel.WATER_OUT, 2.5)
        .heating(60)
        .set(Channel.AIR_IN, 18)
        .heatingAt(Channel.WATER_OUT, riseK)
        .heatingAt(Channel.POWER, watts)
        .heating(60);
  }

  private static List<String> flagsOf(Recording recording) {
    return Analysis.of(recording).flags().stream().map(Flag::rule).toList();
  }

  /** A shed of 34 Cel beside 24 Cel outdoors cools to 26 Cel: still warmer than outdoors. */
  @Test
  void warmAirOfThePlaceIsNoReference() {
    RunBuilder shed = falls(RunBuilder.run(), -10).heating(60);
    assertClear(rule, readings(falls(shed, -2).heating(60).recording()));
    RunBuilder cooler = falls(RunBuilder.run(), -10).heating(60);
    assertClear(rule, readings(falls(cooler, 1).heating(60).recording()));
  }

  /** A defrost: the fan stands, the inlet probe hangs in the warmth of the coil. */
  @Test
  void aDefrostIsNoReference() {
    RunBuilder frost = RunBuilder.run();
    for (int i = 0; i < 4; i++) {
      falls(frost, 1).heating(45);
      falls(frost, -8).defrost(8);
    }
    assertClear(rule, readings(falls(frost, 1).heating(60).recording()));
  }

  @Test
  void aShortRestOrADefrostDoesNotEndIt() {
    RunBuilder run = doorShut(6, 60);
    falls(run, 0).circulating(4);
    assertThat(onlyFlag(rule, readings(falls(run, 6).heating(60).recording())).endMs())
        .isGreaterThan(run.nowMs() - 600_000);
  }

  /** A shed that fills with cold air over hours; outdoor air warms by a little meanwhile. */
  private static RunBuilder creeping(double inletFallsK, double outdoorsRisesK) {
    RunBuilder run = RunBuilder.run().air(22).heating(40);
    for (int i = 1; i <= 24; i++) {
      run.set(Channel.AIR_IN, 22 - inletFallsK * i / 24)
          .set(Channel.AIR_OUT, 16 - inletFallsK * i / 24)
          .set(Channel.AIR_AMBIENT, 22 + outdoorsRisesK * i / 24)
          .heating(10);
    }
    return run.heating(60);
  }

  @Test
  void creepsInOverHours() {
    assertThat(onlyFlag(rule, readings(creeping(6, 2).recording())).evidence())
        .contains("8.0 K below outdoor air in the hour from", "in the first half-hour of running");
    assertClear(rule, readings(creeping(3.5, 1).recording()));
  }

  /** Sun on the outdoor probe lifts that one; on a warm wall it falls late in the evening. */
  @Test
  void anOutdoorProbeInTheSunOrOnAWarmWallIsNone() {
    assertClear(rule, readings(creeping(1.5, 5).recording()));
    assertClear(rule, readings(creeping(10, -4).recording()));
  }

  @Test
  void anInletProbeThatSlipsHasNoWitness() {
    RunBuilder run = RunBuilder.run().without(Channel.AIR_OUT).air(22).heating(40);
    for (int i = 1; i <= 24; i++) {
      run.set(Channel.AIR_IN, 22 - i / 3.0).heating(10);
    }
    assertClear(rule, readings(run.heating(60).recording()));
  }
}
