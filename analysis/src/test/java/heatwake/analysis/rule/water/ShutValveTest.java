package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/**
 * The heater's valve is shut while the bypass flows on, its flow switch sticks closed, and no meter
 * sits in its branch. Pool and entering water 26 Cel, leaving water 27.6 Cel, return 27 Cel: a
 * share of 0.6 of the rise (mixing balance). Behind the shut valve the return has the entering
 * water's temperature, and the heater's water stands as warm as it was.
 */
class ShutValveTest {
  private final NoFlow rule = new NoFlow();

  private static RunBuilder night() {
    return RunBuilder.run()
        .with(Channel.WATER_RETURN, Channel.FLOW_TOTAL)
        .without(Channel.FLOW_HEATER, Channel.FLOW_SWITCH)
        .off(5)
        .circulating(5)
        .fan(0.5)
        .heating(60);
  }

  private static RunBuilder shut(RunBuilder run) {
    return run.set(Channel.WATER_OUT, 27.6).set(Channel.WATER_RETURN, 26);
  }

  private static RunBuilder open(RunBuilder run) {
    return run.free(Channel.WATER_OUT).free(Channel.WATER_RETURN);
  }

  @Test
  void allWaterPastAHeaterThatTriesToRunIsNoFlow() {
    RunBuilder run = shut(night()).heating(0.5).circulating(11).heating(1).circulating(11);
    var flag = onlyFlag(rule, readings(open(run).heating(60).recording()));
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.evidence())
        .isEqualTo(
            "No water through the heater for 23 min: water-out stood 1.6 K above water-in,"
                + " water-return 0.0 K, so all water went past it; it stopped, and tried once to run"
                + " on");
  }

  /** Water that stands warm in the heater is no zero of the pair, which is honest here. */
  @Test
  void noZeroIsTakenFromStandingWater() {
    RunBuilder run = shut(night()).heating(0.5).circulating(30).heating(1).circulating(30);
    var heat = Analysis.of(open(run).heating(60).recording()).heat();
    heat.zeroOffsetK().ifPresent(zero -> assertThat(Math.abs(zero.value())).isLessThan(0.15));
  }

  /** A motor valve that sends the water past a resting heater opens before the next start. */
  @Test
  void aValveThatShutsAtRestOnPurposeIsClear() {
    RunBuilder run = open(shut(night()).circulating(30)).heating(60);
    assertClear(rule, readings(run.circulating(10).recording()));
  }

  /** With water the rise is carried away within minutes of a stop. */
  @Test
  void cyclesWithWaterAreClear() {
    RunBuilder run = night();
    for (int k = 0; k < 4; k++) {
      run.circulating(10).heating(2);
    }
    assertClear(rule, readings(run.circulating(10).heating(60).recording()));
  }

  /** A return probe that reads the entering water all along tells of no share. */
  @Test
  void aReturnProbeOutOfPlaceIsNoWitness() {
    RunBuilder run = night().set(Channel.WATER_RETURN, 26).heating(60);
    assertClear(rule, readings(run.circulating(10).heating(1).circulating(10).recording()));
  }
}
