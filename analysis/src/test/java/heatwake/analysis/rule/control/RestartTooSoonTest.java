package heatwake.analysis.rule.control;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.timeline.Timeline;
import org.junit.jupiter.api.Test;

class RestartTooSoonTest {
  private final RestartTooSoon rule = new RestartTooSoon();

  private static RunBuilder restAfter(double minutes) {
    return RunBuilder.run().circulating(5).heating(30).circulating(minutes).heating(30);
  }

  @Test
  void comparesTheRestWithTheDelayOfTheRig() {
    var flag = onlyFlag(rule, readings(restAfter(2.1).recording()));
    assertThat(flag.evidence())
        .isEqualTo("Restarted 2 min after a stop; the restart delay is 4 min");
  }

  @Test
  void theUsualDelayIsTakenWhereTheRigStatesNone() {
    var flag = onlyFlag(rule, readings(restAfter(1.5).rig(Rigs.bare()).recording()));
    assertThat(flag.evidence())
        .matches(
            "Restarted (89|90) s after a stop; the restart delay is 3 min \\(usual, none stated\\)");
  }

  @Test
  void tenSecondsAreLeftToTheTimer() {
    assertClear(rule, readings(restAfter(4 - 9.0 / 60).recording()));
    onlyFlag(rule, readings(restAfter(4 - 13.0 / 60).recording()));
  }

  @Test
  void aRestBetweenMinuteReadingsIsGivenTheBenefitOfBothEnds() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .every(60)
                .circulating(5)
                .heating(30)
                .circulating(3)
                .heating(30)
                .recording()));
  }

  @Test
  void aRunOfASingleSlowReadingDidNotStop() {
    assertClear(rule, readings(restAfterRunOf(0.5).recording()));
    onlyFlag(rule, readings(restAfterRunOf(3).recording()));
  }

  private static RunBuilder restAfterRunOf(double minutes) {
    return RunBuilder.run().every(30).circulating(5).heating(minutes).circulating(2).heating(60);
  }

  @Test
  void aRestBesideADefrostIsClear() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .air(0)
                .circulating(5)
                .heating(40)
                .defrost(5)
                .circulating(1)
                .heating(40)
                .recording()));
  }

  /** Whether water moves at rest is not known there; that the compressor rests is. */
  @Test
  void aRestInUnknownWaterIsSeenInThePower() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .circulating(5)
            .heating(12);
    for (int k = 0; k < 3; k++) {
      run.circulating(1.25).heating(12);
    }
    assertThat(rule.evaluate(readings(run.recording()))).isInstanceOf(Outcome.Flagged.class);
  }

  /** Heat that dies away after a stop leaves open whether water moves; the power shows the rest. */
  @Test
  void waterThatIsNotKnownRightAfterAStopHidesNoRest() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
            .every(10)
            .circulating(10)
            .heating(40)
            .circulating(2.5)
            .heating(40);
    assertThat(Phases.of(Timeline.of(run.recording()), run.recording()).spans())
        .anyMatch(
            span -> span.phase() == Phase.UNKNOWN && span.startMs() > run.recording().startMs());
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("Restarted 2 min after a stop; the restart delay is 4 min");
  }

  /**
   * Half to two minutes of rest turn the valve before and after a defrost (common practice). A
   * power meter alone shows no more than that; with the air known to be warm there is no ice.
   */
  @Test
  void valveRestsThatNothingElseShowsAreLeftOut() {
    assertClear(rule, readings(defrosting(2, Channel.POWER).recording()));
    assertClear(rule, readings(defrosting(2, Channel.POWER, Channel.AIR_IN).recording()));
    assertThat(
            onlyFlag(rule, readings(defrosting(20, Channel.POWER, Channel.AIR_IN).recording()))
                .evidence())
        .endsWith("6 rests too short");
  }

  /** A thermometer that is silent through one of many defrosts shows none of it. */
  @Test
  void valveRestsDuringASilenceOfTheWaterAreLeftOut() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
            .air(2)
            .circulating(10)
            .heating(40)
            .silent(Channel.WATER_IN)
            .heating(10)
            .circulating(0.5)
            .heating(4)
            .circulating(0.5)
            .heating(10);
    assertClear(rule, readings(run.free(Channel.WATER_IN).heating(40).recording()));
  }

  private static RunBuilder defrosting(double airCel, Channel... channels) {
    RunBuilder run = RunBuilder.run().only(channels).air(airCel).circulating(10).heating(40);
    for (int k = 0; k < 3; k++) {
      run.circulating(1).heating(4).circulating(1).heating(40);
    }
    return run;
  }

  /** No defrost follows another within minutes (common practice: 30 to 90 min). */
  @Test
  void manyShortRestsAreNoDefrostsThoughNothingElseIsRead() {
    RunBuilder run = RunBuilder.run().only(Channel.POWER).circulating(10).heating(12);
    for (int k = 0; k < 3; k++) {
      run.circulating(1.25).heating(12);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).evidence()).endsWith("3 rests too short");
  }

  @Test
  void aDefrostBetweenTwoRestsIsClear() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .air(0)
            .circulating(10)
            .heating(40);
    for (int k = 0; k < 3; k++) {
      run.circulating(2 / 3.0).defrost(4).circulating(2 / 3.0).heating(40);
    }
    assertClear(rule, readings(run.recording()));
  }

  @Test
  void aGapMayHideAnything() {
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .circulating(5)
                .heating(30)
                .nothingRecorded(2)
                .circulating(0.5)
                .heating(30)
                .recording()));
  }

  @Test
  void needsAReadingThatShowsTheCompressor() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .only(Channel.WATER_IN, Channel.WATER_OUT)
                        .heating(30)
                        .recording())))
        .isEqualTo("no power, current, pressure-discharge or energy reading");
  }

  @Test
  void readingsTooSeldomAreSaid() {
    assertThat(
            reason(
                rule,
                readings(
                    RunBuilder.run()
                        .rig(Rigs.bare())
                        .every(120)
                        .circulating(30)
                        .heating(60)
                        .recording())))
        .isEqualTo("readings every 2 min are too seldom to time a rest of 3 min");
  }
}
