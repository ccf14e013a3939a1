package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * A heater runs well and stops. The set temperature is 28 Cel; controls stop within half a kelvin
 * of theirs (common practice).
 */
class StayedAwayTest {
  private static RunBuilder evening(double poolCel) {
    return upToTheStart(poolCel).fan(0.5).heating(120);
  }

  /** Fan and compressor come on too close together to tell what the fan draws. */
  private static RunBuilder withoutLead(double poolCel) {
    return upToTheStart(poolCel).heating(120);
  }

  private static RunBuilder upToTheStart(double poolCel) {
    return RunBuilder.run()
        .every(5)
        .pool(poolCel)
        .heatingAt(Channel.WATER_OUT, 1.55)
        .off(5)
        .circulating(10);
  }

  private static Findings found(RunBuilder run) {
    return Analysis.of(run.recording());
  }

  @Test
  void aCompressorThatStaysAwayFromColdWaterIsNotCalledSound() {
    Findings findings = found(evening(26.3).circulating(150));
    assertThat(findings.verdict().side()).isEqualTo(Side.UNDECIDED);
    assertThat(findings.verdict().because())
        .contains(
            "the compressor stopped with the water 1.7 K below the set temperature and stayed away"
                + " for 2.5 h, to the end of the run");
    assertThat(findings.verdict().wouldDecide()).containsExactly(StayedAway.NEXT_CHECK);
  }

  /** Its small fan may run on, or its crankcase heater: 60 W tell neither from the other. */
  @Test
  void norOneWhoseSmallDrawGoesOn() {
    RunBuilder run = evening(26.3).set(Channel.POWER, 60).circulating(150);
    assertThat(found(run).verdict().side()).isEqualTo(Side.UNDECIDED);
  }

  @Test
  void oneThatStoppedAtTheSetTemperatureIsSound() {
    assertThat(found(evening(27.9).circulating(150)).verdict().side()).isEqualTo(Side.HEALTHY);
  }

  /** It runs only while the pump does: common practice. */
  @Test
  void oneThatStoppedWithThePumpIsTheTimers() {
    assertThat(found(evening(26.3).off(150)).verdict().side()).isEqualTo(Side.SCHEDULE);
  }

  @Test
  void soIsOneThatCameBack() {
    RunBuilder run = evening(26.3).circulating(150).heating(60);
    assertThat(found(run).verdict().side()).isEqualTo(Side.HEALTHY);
  }

  /** A sound heater at rest runs no fan; 0.5 K below the set temperature it may be called for. */
  @Test
  void norIsOneWhoseFanStaysOnWithTheWaterALittleCold() {
    Findings findings = found(withoutLead(27.5).fan(150));
    assertThat(findings.verdict().side()).isEqualTo(Side.UNDECIDED);
    assertThat(findings.verdict().because().toString())
        .contains("what draws like the fan stayed on after the compressor stopped, for 2.5 h");
    // It runs on for minutes, or with the water warm enough.
    assertThat(found(withoutLead(27.5).fan(4).circulating(150)).verdict().side())
        .isEqualTo(Side.HEALTHY);
    assertThat(found(withoutLead(27.9).fan(150)).verdict().side()).isEqualTo(Side.HEALTHY);
  }

  /** On a visit in mild air an hour is not waited for: nothing is thawed, and no fan runs on so. */
  @Test
  void norIsOneOnAVisitWhoseSmallFanStaysOn() {
    RunBuilder visit = upToTheStart(26).heating(20).set(Channel.POWER, 70).circulating(40);
    Findings findings = found(visit);
    assertThat(findings.verdict().side()).isEqualTo(Side.UNDECIDED);
    assertThat(findings.verdict().because().toString())
        .contains("what draws like the fan stayed on after the compressor stopped, for 40 min");
    // Who switches the heater off and lets the pump run leaves no fan on.
    RunBuilder flushed = upToTheStart(26).heating(30).circulating(40);
    assertThat(found(flushed).verdict().side()).isEqualTo(Side.HEALTHY);
  }

  /** Where nothing is proved, the fan is still said, and what tells it from another load. */
  @Test
  void aFanWithoutACompressorIsSaidThoughItProvesNothing() {
    Findings findings = found(RunBuilder.run().every(10).pool(27.5).circulating(10).fan(150));
    assertThat(findings.verdict().side()).isEqualTo(Side.UNDECIDED);
    assertThat(findings.verdict().because().toString())
        .contains(
            "the compressor was not seen running; what draws like the fan stayed on for 2.5 h to the"
                + " end of the run, with the water about 0.5 K below the set temperature");
    assertThat(findings.verdict().wouldDecide().toString()).contains("see whether the fan turns");
  }

  /** A crankcase heater is on before the start too. */
  @Test
  void aSmallDrawThatWasThereBeforeIsNoFan() {
    RunBuilder visit =
        RunBuilder.run()
            .every(5)
            .pool(26)
            .heatingAt(Channel.WATER_OUT, 1.55)
            .off(5)
            .set(Channel.POWER, 70)
            .circulating(10)
            .free(Channel.POWER)
            .heating(30)
            .set(Channel.POWER, 70)
            .circulating(40);
    assertThat(found(visit).verdict().because().toString()).doesNotContain("like the fan");
  }
}
