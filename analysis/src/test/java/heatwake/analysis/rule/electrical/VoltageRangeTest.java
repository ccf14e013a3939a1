package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** The typical rig: 230 V nominal, meter with a standard uncertainty of 1 %. */
class VoltageRangeTest {
  private final VoltageRange rule = new VoltageRange();

  private static RunBuilder supply(double volt, double minutes) {
    return RunBuilder.run()
        .heating(5)
        .set(Channel.VOLTAGE, volt)
        .heating(minutes)
        .free(Channel.VOLTAGE)
        .heating(5);
  }

  @Test
  void lowSupply() {
    assertThat(onlyFlag(rule, readings(supply(195, 10).recording())).evidence())
        .isEqualTo("Supply at 195 V for 10 min, 15 % below nominal 230 V; 10 % are allowed");
  }

  @Test
  void highSupply() {
    assertThat(onlyFlag(rule, readings(supply(265, 10).recording())).evidence())
        .isEqualTo("Supply at 265 V for 10 min, 15 % above nominal 230 V; 10 % are allowed");
  }

  @Test
  void withinTheUncertaintyOfTheMeterItIsClear() {
    assertClear(rule, readings(supply(201, 10).recording()));
    assertClear(rule, readings(supply(259, 10).recording()));
  }

  @Test
  void aShortSagIsClear() {
    assertClear(rule, readings(supply(190, 0.8).recording()));
  }

  @Test
  void aHeaterSwitchedOffIsClear() {
    assertClear(rule, readings(supply(0, 30).recording()));
  }

  @Test
  void needsVoltageAndNominal() {
    assertThat(reason(rule, readings(supply(195, 5).rig(Rigs.bare()).recording())))
        .isEqualTo("no heater.voltage in the rig");
    assertThat(reason(rule, readings(RunBuilder.run().only(Channel.POWER).heating(5).recording())))
        .isEqualTo("no voltage reading");
  }
}
