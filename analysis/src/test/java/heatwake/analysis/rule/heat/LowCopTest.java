package heatwake.analysis.rule.heat;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import org.junit.jupiter.api.Test;

class LowCopTest {
  private final LowCop rule = new LowCop();

  @Test
  void saysCopExpectedCopAndPower() {
    assertThat(
            onlyFlag(
                    rule,
                    AtDuty.sound()
                        .set(DutyFigure.HEAT, 15_500, 400)
                        .set(DutyFigure.POWER, 3_500, 35)
                        .set(DutyFigure.COP_RATIO, 0.75, 0.04)
                        .set(DutyFigure.POWER_RATIO, 1.28, 0.03)
                        .evidence())
                .evidence())
        .isEqualTo(
            "COP 4.4 where the nameplate promises 5.9, 75 ± 8 % of it, over 60 min of steady"
                + " running; power 128 ± 6 % of the nameplate's");
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, AtDuty.sound().set(DutyFigure.COP_RATIO, 0.88, 0).evidence());
    onlyFlag(rule, AtDuty.sound().set(DutyFigure.COP_RATIO, 0.879, 0).evidence());
    assertClear(rule, AtDuty.sound().set(DutyFigure.COP_RATIO, 0.80, 0.0501).evidence());
    onlyFlag(rule, AtDuty.sound().set(DutyFigure.COP_RATIO, 0.80, 0.0499).evidence());
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound(Rigs.bare()).only(DutyFigure.POWER).evidence()))
        .isEqualTo("no [[heater.rating]] with power in the rig to compare the COP with");
    assertThat(reason(rule, AtDuty.sound().without(DutyFigure.COP_RATIO).evidence()))
        .isEqualTo("heat, power or air temperature not known while running steadily");
  }
}
