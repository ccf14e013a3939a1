package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.AtDuty;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From a low heat and what the circuit shows beside it to the side that is named. */
class LowHeatCauseTest {
  private static final double L_PER_MIN = 1e-3 / 60;

  private static List<String> rules(List<Flag> flags) {
    return flags.stream().map(Flag::rule).toList();
  }

  private static Verdict verdict(Evidence evidence) {
    return Judgement.of(evidence).verdict();
  }

  @Test
  void lowHeatWithAHighApproachAndLowFlowIsWater() {
    Judgement judgement =
        Judgement.of(
            AtDuty.sound()
                .set(DutyFigure.FLOW, 55 * L_PER_MIN, 1 * L_PER_MIN)
                .set(DutyFigure.CONDENSER_APPROACH, 16, 0.4)
                .set(DutyFigure.HEAT_RATIO, 0.82, 0.03)
                .set(DutyFigure.COP_RATIO, 0.72, 0.03)
                .set(DutyFigure.POWER_RATIO, 1.14, 0.02)
                .evidence());
    assertThat(rules(judgement.flags())).containsExactly("low-heater-flow");
    assertThat(judgement.flags().get(0).evidence())
        .contains("Follows from it: ", "condenser-approach (", "low-heat (", "low-cop (");
    assertThat(judgement.verdict().side()).isEqualTo(Side.WATER);
    assertThat(judgement.verdict().confidence()).isGreaterThan(0.8);
  }

  @Test
  void lowHeatWithLowSuctionAndHighSuperheatIsRefrigerant() {
    Judgement judgement =
        Judgement.of(
            AtDuty.sound()
                .set(DutyFigure.SUPERHEAT, 16, 0.5)
                .set(DutyFigure.SUBCOOLING, 0.5, 0.4)
                .set(DutyFigure.STANDARD_APPROACH, 25, 0.8)
                .set(DutyFigure.CONDENSER_APPROACH, 5.5, 0.4)
                .set(DutyFigure.HEAT_RATIO, 0.72, 0.03)
                .set(DutyFigure.COP_RATIO, 0.82, 0.03)
                .set(DutyFigure.POWER_RATIO, 0.88, 0.02)
                .evidence());
    assertThat(rules(judgement.flags())).containsExactly("low-charge");
    assertThat(judgement.verdict().side()).isEqualTo(Side.REFRIGERANT);
  }

  @Test
  void lowHeatWithASoundCircuitAndLessPowerIsAWornCompressor() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, 0.68, 0.03)
                .set(DutyFigure.COP_RATIO, 0.8, 0.03)
                .set(DutyFigure.POWER_RATIO, 0.84, 0.02)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(verdict.because()).contains("fits a worn compressor");
  }

  @Test
  void lowHeatWithNothingElseOutOfPlaceIsUndecided() {
    // Power as expected, circuit as it should be: the flow meter may be at fault as well.
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, 0.8, 0.03)
                .set(DutyFigure.COP_RATIO, 0.8, 0.03)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict.because().get(0)).startsWith("low-heat: ");
  }

  @Test
  void lowHeatWithoutPressuresIsUndecidedAndSaysWhatToClip() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .only(
                    DutyFigure.HEAT,
                    DutyFigure.EXPECTED_HEAT,
                    DutyFigure.HEAT_RATIO,
                    DutyFigure.FLOW,
                    DutyFigure.RISE,
                    DutyFigure.LOAD,
                    DutyFigure.AIR)
                .set(DutyFigure.HEAT_RATIO, 0.7, 0.03)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict.wouldDecide().toString()).contains("pressure-suction");
  }

  @Test
  void aHighApproachWithoutSubcoolingMayBeScaleOrCharge() {
    Judgement judgement =
        Judgement.of(
            AtDuty.sound()
                .without(DutyFigure.SUBCOOLING)
                .set(DutyFigure.CONDENSER_APPROACH, 18, 0.4)
                .evidence());
    assertThat(rules(judgement.flags())).containsExactly("condenser-approach");
    assertThat(judgement.verdict().side()).isEqualTo(Side.UNDECIDED);
    assertThat(judgement.verdict().wouldDecide())
        .contains("clip pressure-discharge and temp-liquid");
  }

  @Test
  void airInTheCircuitShowsWhileItRests() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .set(DutyFigure.CONDENSER_APPROACH, 17, 0.4)
                .set(DutyFigure.SUBCOOLING, 8, 0.4)
                .set(DutyFigure.STANDING_EXCESS, 6, 0.8)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.REFRIGERANT);
  }

  @Test
  void aMotorThatDrawsTooMuchIsElectrical() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .set(DutyFigure.COP_RATIO, 0.65, 0.03)
                .set(DutyFigure.POWER_RATIO, 1.5, 0.03)
                .set(DutyFigure.UNEXPLAINED_POWER_RATIO, 1.35, 0.03)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.ELECTRICAL);
  }
}
