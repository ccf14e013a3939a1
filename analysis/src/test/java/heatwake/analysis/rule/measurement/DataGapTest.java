package heatwake.analysis.rule.measurement;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.EventKind;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DataGapTest {
  private final DataGap rule = new DataGap();

  private static RunBuilder gapOf(Channel channel, double minutes) {
    return RunBuilder.run().heating(30).silent(channel).heating(minutes).free(channel).heating(30);
  }

  @Test
  void oneGapOfOneChannel() {
    var flag = onlyFlag(rule, readings(gapOf(Channel.WATER_IN, 10).recording()));
    assertThat(flag.evidence()).isEqualTo("No reading of water-in for 10 min; usual is every 1 s");
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
    assertThat(flag.channels()).containsExactly(Channel.WATER_IN);
  }

  /** Sends a noisy value when it has left a dead band of 0.2 K, and every quarter of an hour. */
  private static RunBuilder.Change onChange(double[] standardK) {
    Random random = new Random(4);
    double[] last = {Double.NaN, 0};
    return (atS, value) -> {
      double now = value + standardK[0] * random.nextGaussian();
      if (Math.abs(now - last[0]) < 0.2 && atS - last[1] < 900) {
        return Double.NaN;
      }
      last[0] = now;
      last[1] = atS;
      return now;
    };
  }

  @Test
  void aDeadBandIsSilentWhileNothingChanges() {
    double[] standardK = {0.3};
    RunBuilder run =
        RunBuilder.run().change(Channel.TEMP_SUCTION, onChange(standardK)).circulating(5);
    run.heating(60);
    standardK[0] = 0.02;
    run.heating(40);
    standardK[0] = 0.3;
    assertClear(rule, readings(run.heating(60).recording()));
  }

  /** A change may end a silence that is no longer than others in which nothing changed. */
  @Test
  void aChangeMayEndTheSilenceOfADeadBand() {
    double[] standardK = {0.3};
    RunBuilder run = RunBuilder.run().change(Channel.TEMP_SUCTION, onChange(standardK)).heating(30);
    standardK[0] = 0.02;
    run.heating(36).heatingAt(Channel.TEMP_SUCTION, 24).heating(2);
    standardK[0] = 0.3;
    assertClear(rule, readings(run.heating(30).recording()));
  }

  /** The run may end while it is silent. */
  @Test
  void theSilenceOfADeadBandMayLastToTheEnd() {
    double[] standardK = {0.3};
    RunBuilder run = RunBuilder.run().change(Channel.TEMP_SUCTION, onChange(standardK)).heating(60);
    standardK[0] = 0.001;
    assertClear(rule, readings(run.heating(8).recording()));
    onlyFlag(rule, readings(run.silent(Channel.TEMP_SUCTION).heating(30).recording()));
  }

  @Test
  void aDeadBandDoesNotExcuseALostProbe() {
    double[] standardK = {0.3};
    RunBuilder.Change change = onChange(standardK);
    RunBuilder run = RunBuilder.run().change(Channel.TEMP_SUCTION, change).heating(60);
    run.silent(Channel.TEMP_SUCTION).heating(20).heatingAt(Channel.TEMP_SUCTION, 22).heating(10);
    run.change(Channel.TEMP_SUCTION, change).heating(30);
    assertThat(onlyFlag(rule, readings(run.recording())).channels())
        .containsExactly(Channel.TEMP_SUCTION);
  }

  @Test
  void manyGapsAreOneFlag() {
    RunBuilder run = RunBuilder.run().only(Channel.WATER_IN, Channel.POWER).heating(10);
    for (int k = 0; k < 5; k++) {
      run.silent(Channel.WATER_IN).heating(2).free(Channel.WATER_IN).heating(10);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("5 gaps in water-in, together 10 min, the longest 2 min; usual is every 1 s");
  }

  @Test
  void everythingSilentAtOnceIsOneFlagWithTheRecordersWord() {
    RunBuilder run =
        RunBuilder.run()
            .heating(10)
            .event(EventKind.RECORDER_STOPPED, "recorder", "found to have been killed")
            .nothingRecorded(20)
            .heating(10);
    var flag = onlyFlag(rule, readings(run.recording()));
    assertThat(flag.evidence())
        .isEqualTo("No reading of any channel for 20 min; usual is every 1 s");
    assertThat(flag.causes().get(0)).isEqualTo("recorder: found to have been killed");
  }

  @Test
  void aProbeThatDiesIsSilentToTheEnd() {
    RunBuilder run = RunBuilder.run().heating(30).silent(Channel.POWER).heating(60);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo("No reading of power for 60 min; usual is every 1 s");
  }

  @Test
  void threeIntervalsAreTheLimitForSlowProbes() {
    assertClear(rule, readings(minuteProbe(2).recording()));
    onlyFlag(rule, readings(minuteProbe(4).recording()));
  }

  private static RunBuilder minuteProbe(int skipped) {
    return RunBuilder.run()
        .only(Channel.WATER_IN)
        .every(60)
        .heating(200)
        .silent(Channel.WATER_IN)
        .heating(skipped)
        .free(Channel.WATER_IN)
        .heating(200);
  }

  @Test
  void aProbeThatOftenSkipsIsNotSilent() {
    Random random = new Random(3);
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN)
            .every(60)
            .change(Channel.WATER_IN, (atS, cel) -> random.nextDouble() < 0.05 ? Double.NaN : cel);
    assertClear(rule, readings(run.heating(840).recording()));
  }

  /** A radio that loses one reading in ten at random has holes of seven now and then. */
  @Test
  void lossesByChanceAreNoGap() {
    Random random = new Random(8);
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WIND_SPEED)
            .every(10)
            .change(Channel.WIND_SPEED, (atS, v) -> random.nextDouble() < 0.1 ? Double.NaN : v);
    assertClear(rule, readings(run.heating(840).recording()));
  }

  @Test
  void aHoleThatChanceDoesNotExplainIsOneInALossyLinkToo() {
    Random random = new Random(8);
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WIND_SPEED)
            .every(10)
            .change(Channel.WIND_SPEED, (atS, v) -> random.nextDouble() < 0.1 ? Double.NaN : v)
            .heating(400)
            .silent(Channel.WIND_SPEED)
            .heating(4)
            .change(Channel.WIND_SPEED, (atS, v) -> random.nextDouble() < 0.1 ? Double.NaN : v);
    assertThat(onlyFlag(rule, readings(run.heating(400).recording())).evidence())
        .startsWith("No reading of wind-speed for 4");
  }

  @Test
  void lessThanAMinuteInAFastChannelIsNotWorthAWord() {
    assertClear(rule, readings(gapOf(Channel.WATER_IN, 0.8).recording()));
    onlyFlag(rule, readings(gapOf(Channel.WATER_IN, 1.5).recording()));
  }

  @Test
  void aStateSentOnChangeIsExempt() {
    double[] last = {Double.NaN};
    RunBuilder run =
        RunBuilder.run()
            .change(
                Channel.PUMP_ON,
                (atS, state) -> {
                  boolean same = state == last[0];
                  last[0] = state;
                  return same ? Double.NaN : state;
                })
            .off(30)
            .heating(120)
            .off(30);
    assertClear(rule, readings(run.recording()));
  }
}
