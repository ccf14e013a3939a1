package heatwake.analysis.rule.refrigerant;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * R-410A, gauges at 1.60 and 1.25 MPa: it condenses at 25 Cel and evaporates at 17 Cel. At 150
 * L/min each kelvin of rise is 10.4 kW.
 */
class IdleLiftTest {
  private static RunBuilder overSmallLift(double riseK, double powerW) {
    return RunBuilder.run()
        .without(Channel.AIR_IN, Channel.AIR_OUT, Channel.AIR_AMBIENT)
        .air(18)
        .heatingAt(Channel.PRESSURE_DISCHARGE, 1600)
        .heatingAt(Channel.PRESSURE_SUCTION, 1250)
        .heatingAt(Channel.WATER_OUT, riseK)
        .heatingAt(Channel.POWER, powerW);
  }

  private static List<Flag> flags(RunBuilder run) {
    return Analysis.of(run.off(5).circulating(12).fan(0.5).heating(60).circulating(10).recording())
        .flags();
  }

  @Test
  void aCompressorThatPartsTheSidesButGivesNoHeatPumpsNothing() {
    List<Flag> flags = flags(overSmallLift(0.3, 1300));
    assertThat(flags).extracting(Flag::rule).containsExactly("no-pressure-rise");
    assertThat(flags.get(0).side()).isEqualTo(Side.REFRIGERANT);
    assertThat(flags.get(0).evidence())
        .contains("K apart; the compressor draws 1.3 kW and the water takes up 2.4 ± ");
  }

  /** At a small lift a sound compressor that runs slowly gives ten times its power and more. */
  @Test
  void aSlowCompressorThatGivesItsHeatIsSound() {
    assertThat(flags(overSmallLift(0.5, 450))).isEmpty();
  }

  @Test
  void heatThatIsNotKnownWellEnoughTellsNothing() {
    assertThat(flags(overSmallLift(0.6, 1300))).isEmpty();
  }

  @Test
  void anotherLoadOnTheMeterIsNoWorkOfTheCompressor() {
    assertThat(
            flags(
                overSmallLift(0.3, 450)
                    .change(Channel.POWER, (atS, watts) -> atS < 300 ? watts : watts + 800)))
        .extracting(Flag::rule)
        .doesNotContain("no-pressure-rise");
  }
}
