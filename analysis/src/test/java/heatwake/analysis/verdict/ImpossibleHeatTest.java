package heatwake.analysis.verdict;

import static heatwake.analysis.verdict.RaisedFlags.flag;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.AtDuty;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Heat that cannot be, so that a probe is wrong and no machine or pool is blamed. */
class ImpossibleHeatTest {
  private static List<String> rules(List<Flag> flags) {
    return flags.stream().map(Flag::rule).toList();
  }

  private static Verdict verdict(Evidence evidence) {
    return Judgement.of(evidence).verdict();
  }

  @Test
  void moreHeatThanTheNameplateIsNoProofOfHealth() {
    Verdict verdict = verdict(AtDuty.sound().set(DutyFigure.HEAT_RATIO, 1.45, 0.05).evidence());
    assertThat(verdict.side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict.wouldDecide().get(0)).startsWith("check the flow meter");
  }

  /** First law: a compressor adds its work to the water, it never cools it. */
  @Test
  void aHeaterThatSeemsToCoolItsWaterIsMeasuredWrongly() {
    Judgement judgement =
        Judgement.of(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, -0.2, 0.03)
                .set(DutyFigure.COP_RATIO, -0.2, 0.03)
                .evidence());
    assertThat(rules(judgement.flags())).containsExactly("low-heat");
    assertThat(judgement.flags().get(0).evidence())
        .contains(
            ". But heat of −20 ± 6 % of the nameplate's cannot be right: a heater whose compressor"
                + " runs does not cool its water");
    assertThat(judgement.verdict().side()).isEqualTo(Side.MEASUREMENT);
    assertThat(judgement.verdict().because().get(0)).startsWith("low-heat: ");
    assertThat(judgement.verdict().wouldDecide().get(0))
        .startsWith("Zero the probe pair: ")
        .contains("Compare both water probes");
  }

  @Test
  void noHeatAtAllMayBe() {
    Judgement judgement =
        Judgement.of(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, -0.02, 0.03)
                .set(DutyFigure.COP_RATIO, -0.02, 0.03)
                .evidence());
    assertThat(judgement.verdict().side()).isNotEqualTo(Side.MEASUREMENT);
    assertThat(judgement.flags()).noneMatch(flag -> flag.evidence().contains("cannot be right"));
  }

  @Test
  void halfAsMuchHeatAgainAsThePlateIsMeasuredWrongly() {
    Verdict verdict = verdict(AtDuty.sound().set(DutyFigure.HEAT_RATIO, 1.7, 0.06).evidence());
    assertThat(verdict.side()).isEqualTo(Side.MEASUREMENT);
    assertThat(verdict.because())
        .containsExactly(
            "heat of 170 ± 12 % of the nameplate's cannot be right: no heater gives half as much"
                + " again as its plate");
    assertThat(verdict(AtDuty.sound().set(DutyFigure.HEAT_RATIO, 1.6, 0.06).evidence()).side())
        .isEqualTo(Side.UNDECIDED);
  }

  @Test
  void heatThatGrowsWithoutPowerIsMeasuredWrongly() {
    AtDuty grown =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.92, 0.06)
            .then()
            .set(DutyFigure.HEAT_RATIO, 1.4, 0.09);
    Verdict verdict = verdict(grown.evidence());
    assertThat(verdict.side()).isEqualTo(Side.MEASUREMENT);
    assertThat(verdict.because())
        .containsExactly(
            "heat that grows from 92 % to 140 % of the nameplate's while the power stays cannot be"
                + " right: a water probe drifts or the flow meter misleads");
    // With the power the heat may grow: an inverter that speeds up.
    assertThat(verdict(grown.set(DutyFigure.POWER_RATIO, 1.5, 0.03).evidence()).because())
        .noneMatch(text -> text.contains("cannot be right"));
  }

  @Test
  void aLossOfHeatThatCannotBeIsNotThePools() {
    Evidence evidence = AtDuty.sound().set(DutyFigure.HEAT_RATIO, 1.8, 0.06).evidence();
    long startMin = evidence.duty().get(0).startMs() / 60_000;
    Flag loss = flag("heat-loss", Side.POOL, startMin, startMin + 60, Channel.FLOW_HEATER);
    assertThat(new FlagSides(evidence).sided(loss).side()).isEqualTo(Side.MEASUREMENT);
    assertThat(new FlagSides(AtDuty.sound().evidence()).sided(loss).side()).isEqualTo(Side.POOL);
  }

  /** Set temperature and pool are compared by a clip on the pipe where the pool has no probe. */
  @Test
  void aSetTemperatureReadByADoubtedClipIsNotThePools() {
    Evidence evidence = AtDuty.sound().set(DutyFigure.HEAT_RATIO, 2.0, 0.12).evidence();
    long startMin = evidence.duty().get(0).startMs() / 60_000;
    List<Flag> flags =
        List.of(
            flag("heat-loss", Side.POOL, startMin, startMin + 60, Channel.WATER_IN),
            flag("setpoint-unreachable", Side.POOL, startMin, startMin + 60, Channel.WATER_IN));
    FlagSides sides = new FlagSides(evidence);
    assertThat(flags.stream().map(sides::sided).map(Flag::side)).containsOnly(Side.MEASUREMENT);
    assertThat(sides.sided(flags.get(1)).evidence())
        .startsWith(
            "evidence of setpoint-unreachable. But that is read by a pipe probe, and heat of");
    FlagSides sound = new FlagSides(AtDuty.sound().evidence());
    assertThat(flags.stream().map(sound::sided).map(Flag::side)).containsOnly(Side.POOL);
  }

  /** Faster than rated costs COP, slower costs heat: physics of exchangers. */
  @Test
  void muchMoreHeatAtABetterCopIsMeasuredWrongly() {
    AtDuty hot =
        AtDuty.sound().set(DutyFigure.HEAT_RATIO, 1.56, 0.16).set(DutyFigure.COP_RATIO, 1.32, 0.15);
    assertThat(verdict(hot.evidence()).side()).isEqualTo(Side.MEASUREMENT);
    assertThat(verdict(hot.evidence()).because().get(0))
        .startsWith("heat of 156 ± 32 % of the nameplate's at a COP of 132 ± 30 % of it cannot be");
    // A fast inverter, and one whose plate is stated low.
    AtDuty fast = hot.set(DutyFigure.COP_RATIO, 0.95, 0.1);
    assertThat(new FlagSides(fast.evidence()).heatDoubt()).isEmpty();
    AtDuty low = hot.set(DutyFigure.HEAT_RATIO, 1.4, 0.1).set(DutyFigure.COP_RATIO, 1.3, 0.1);
    assertThat(new FlagSides(low.evidence()).heatDoubt()).isEmpty();
  }
}
