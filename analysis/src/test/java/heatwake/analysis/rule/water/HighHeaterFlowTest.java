package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import org.junit.jupiter.api.Test;

/** The typical rig's nameplate wants 90 to 200 L/min. */
class HighHeaterFlowTest {
  private static final double L_PER_MIN = 1e-3 / 60;
  private final HighHeaterFlow rule = new HighHeaterFlow();

  private static AtDuty flow(double lPerMin, double standardLPerMin) {
    return AtDuty.sound()
        .set(DutyFigure.FLOW, lPerMin * L_PER_MIN, standardLPerMin * L_PER_MIN)
        .set(DutyFigure.RISE, 1.4, 0.05);
  }

  @Test
  void saysFlowAndLimit() {
    assertThat(onlyFlag(rule, flow(260, 5).evidence()).evidence())
        .isEqualTo(
            "Flow 260 L/min is above the heater's 200 L/min maximum for 60 min of steady running,"
                + " the water rises by only 1.4 K");
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, flow(205, 0).evidence());
    assertClear(rule, flow(215, 5.1).evidence());
    onlyFlag(rule, flow(215, 4.9).evidence());
  }

  /** Other heat in the line misleads a balance: no heater gives twice its plate. */
  @Test
  void aFlowThatMakesAnImpossibleHeatIsNone() {
    assertClear(rule, flow(260, 5).set(DutyFigure.HEAT_RATIO, 1.9, 0.12).evidence());
    onlyFlag(rule, flow(260, 5).set(DutyFigure.HEAT_RATIO, 1.4, 0.12).evidence());
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound(Rigs.bare()).evidence()))
        .isEqualTo("no heater.flow-max in the rig");
    assertThat(reason(rule, AtDuty.sound().without(DutyFigure.FLOW).evidence()))
        .isEqualTo("no flow through the heater known while it runs steadily");
  }
}
