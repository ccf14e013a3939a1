package heatwake.analysis.verdict;

import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.verdict.RaisedFlags.alarm;
import static heatwake.analysis.verdict.RaisedFlags.flag;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Rules;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The road from rules to verdict: silencing, consequences, sides, confidence. */
class JudgementTest {
  private static List<String> rules(List<Flag> flags) {
    return flags.stream().map(Flag::rule).toList();
  }

  // Silencing.

  @Test
  void aStuckProbeSilencesWhatRestsOnIt() {
    List<Flag> standing =
        Silencing.of(
            List.of(
                flag("probe-stuck", Side.MEASUREMENT, 60, 600, Channel.FLOW_HEATER),
                flag("low-heat", Side.UNDECIDED, 50, 610, Channel.FLOW_HEATER, Channel.WATER_IN),
                flag("short-cycling", Side.CONTROL, 0, 600, Channel.POWER)));
    assertThat(rules(standing)).containsExactly("probe-stuck", "short-cycling");
    assertThat(standing.get(0).evidence())
        .isEqualTo("evidence of probe-stuck. Not held against the heater: low-heat");
  }

  @Test
  void aProbeThatFailedForAMomentSilencesNothing() {
    assertThat(
            rules(
                Silencing.of(
                    List.of(
                        flag("probe-stuck", Side.MEASUREMENT, 60, 70, Channel.FLOW_HEATER),
                        flag("low-heat", Side.UNDECIDED, 0, 600, Channel.FLOW_HEATER)))))
        .containsExactly("probe-stuck", "low-heat");
  }

  @Test
  void anOffsetThatIsSubtractedSilencesNothing() {
    assertThat(
            rules(
                Silencing.of(
                    List.of(
                        flag("probe-offset", Side.MEASUREMENT, 0, 600, Channel.WATER_IN),
                        flag("low-heat", Side.UNDECIDED, 0, 600, Channel.WATER_IN)))))
        .containsExactly("probe-offset", "low-heat");
  }

  @Test
  void aJumpOfTheClockSilencesWhatCountsTime() {
    assertThat(
            rules(
                Silencing.of(
                    List.of(
                        flag("clock-step", Side.MEASUREMENT, 100, 100),
                        flag("restart-too-soon", Side.CONTROL, 90, 110),
                        flag("restart-too-soon", Side.CONTROL, 200, 210)))))
        .containsExactly("clock-step", "restart-too-soon");
  }

  /** A plain overcurrent is not made surer by what would part the causes of the COP beside it. */
  @Test
  void whatWouldDecideIsAskedOfTheSideThatIsNamed() {
    Flag overcurrent = flag("overcurrent", Side.ELECTRICAL, 0, 60, Channel.CURRENT);
    Flag cop = flag("low-cop", Side.UNDECIDED, 0, 60, Channel.POWER);
    Evidence bare = AtDuty.sound().only(DutyFigure.COP_RATIO, DutyFigure.POWER_RATIO).evidence();
    Reasoning reasoning = reasoning(bare);
    assertThat(reasoning.verdict(List.of(cop, overcurrent)).wouldDecide())
        .containsExactly("look at it");
    assertThat(reasoning.verdict(List.of(cop)).wouldDecide()).hasSizeGreaterThan(3);
  }

  @Test
  void aFlowToldByTheRiseAloneIsLessCertain() {
    Reasoning reasoning = reasoning(AtDuty.sound().evidence());
    Flag byRise = flag("low-heater-flow", Side.WATER, 0, 60, Channel.WATER_IN, Channel.WATER_OUT);
    Flag byFlow = flag("low-heater-flow", Side.WATER, 0, 60, Channel.FLOW_HEATER);
    assertThat(reasoning.verdict(List.of(byRise)).confidence()).isEqualTo(0.65);
    assertThat(reasoning.verdict(List.of(byFlow)).confidence()).isEqualTo(0.85);
  }

  /** The motor is saved first, though the warning weighs more: 0.9 against 0.85. */
  @Test
  void anAlarmComesBeforeAWarning() {
    Flag warning = flag("no-flow", Side.WATER, 0, 60, Channel.FLOW_SWITCH);
    Flag overcurrent = flag("overcurrent", Side.ELECTRICAL, 0, 60, Channel.CURRENT);
    Reasoning reasoning = reasoning(AtDuty.sound().evidence());
    assertThat(reasoning.verdict(List.of(warning, overcurrent)).side()).isEqualTo(Side.WATER);
    Verdict verdict = reasoning.verdict(List.of(warning, alarm(overcurrent)));
    assertThat(verdict.side()).isEqualTo(Side.ELECTRICAL);
    assertThat(verdict.confidence()).isEqualTo(0.54);
    // A word worth knowing does not speak loudly enough to come first.
    Flag faint = alarm(flag("setpoint-unreachable", Side.SCHEDULE, 0, 60));
    Flag fainter = alarm(flag("data-gap", Side.CONTROL, 0, 60));
    assertThat(reasoning.verdict(List.of(warning, fainter)).side()).isEqualTo(Side.WATER);
    assertThat(reasoning.verdict(List.of(warning, faint)).side()).isEqualTo(Side.SCHEDULE);
  }

  /**
   * Most open pools lose what a heater gives (common practice), so a pool's loss speaks against no
   * fault that gauges show; a flag that rests on the same heat as the loss stays behind it.
   */
  @Test
  void aPoolsLossComesAfterAFaultThatOtherFiguresShow() {
    Reasoning reasoning = reasoning(AtDuty.sound().evidence());
    Flag loss = flag("heat-loss", Side.POOL, 0, 600);
    Verdict verdict = reasoning.verdict(List.of(loss, flag("high-heater-flow", Side.WATER, 0, 60)));
    assertThat(verdict.side()).isEqualTo(Side.WATER);
    assertThat(verdict.because().toString()).contains("also heat-loss");
    assertThat(reasoning.verdict(List.of(loss, flag("low-cop", Side.WATER, 0, 600))).side())
        .isEqualTo(Side.POOL);
  }

  @Test
  void ofTwoThatWeighAlikeTheLastingOneComesFirst() {
    Reasoning reasoning = reasoning(AtDuty.sound().evidence());
    Flag frost = flag("frosting", Side.AIRFLOW, 100, 133);
    Flag hours = flag("pump-hours", Side.SCHEDULE, 300, 560);
    assertThat(reasoning.verdict(List.of(frost, hours)).side()).isEqualTo(Side.SCHEDULE);
    Flag longer = flag("frosting", Side.AIRFLOW, 0, 290);
    assertThat(reasoning.verdict(List.of(longer, hours)).side()).isEqualTo(Side.AIRFLOW);
    // A probe in doubt comes before what was read by it.
    Flag clip = flag("clock-step", Side.MEASUREMENT, 0, 10);
    Flag set = flag("setpoint-unreachable", Side.SCHEDULE, 0, 600);
    assertThat(Weighing.isOutlasted(Side.MEASUREMENT, Side.SCHEDULE, List.of(clip, set))).isFalse();
  }

  /** However much speaks for the first, the second has to be mended too. */
  @Test
  void aSecondCauseIsToldBeforeTheLastSymptomOfTheFirst() {
    AtDuty overcharged =
        AtDuty.sound()
            .set(DutyFigure.CONDENSER_APPROACH, 24, 0.4)
            .set(DutyFigure.SUBCOOLING, 22, 0.5)
            .set(DutyFigure.SUBCOOLING_SHARE, 0.83, 0.03)
            .set(DutyFigure.DISCHARGE_SUPERHEAT, 57, 0.5)
            .set(DutyFigure.POWER_RATIO, 1.6, 0.05);
    long from = overcharged.duty().startMs() / 60_000;
    long to = overcharged.duty().endMs() / 60_000;
    Flag approach =
        flag("condenser-approach", Side.REFRIGERANT, from, to, Channel.PRESSURE_DISCHARGE);
    Flag stale = flag("air-recirculation", Side.AIRFLOW, from, to, Channel.AIR_IN);
    List<String> because =
        reasoning(overcharged.evidence()).verdict(List.of(alarm(approach), stale)).because();
    assertThat(because).hasSize(6);
    assertThat(because.get(0)).startsWith("condenser-approach: ");
    assertThat(because.get(1)).startsWith("fits ");
    assertThat(because.get(5)).contains("air-recirculation", "evidence of air-recirculation");
  }

  /** The rig states what the nameplate promises; what it promises today depends on the air. */
  @Test
  void whereRatingsAreStatedTheProbeIsAskedFor() {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.POWER)
            .circulating(15)
            .heating(60);
    assertThat(Analysis.of(run.recording()).verdict().wouldDecide())
        .containsExactly(
            "clip air-in or air-ambient, on which the heat that the nameplate promises depends");
  }

  // Verdicts from whole evidence.

  private static Verdict verdict(Evidence evidence) {
    return Judgement.of(evidence).verdict();
  }

  @Test
  void heatWithinItsUncertaintyOfTheNameplateIsHealthy() {
    Verdict verdict = verdict(AtDuty.sound().evidence());
    assertThat(verdict.side()).isEqualTo(Side.HEALTHY);
    assertThat(verdict.confidence()).isGreaterThan(0.85);
    assertThat(verdict.because().get(0))
        .isEqualTo("heat is 99 ± 7 % of the nameplate's at these conditions");
  }

  @Test
  void aVagueRatioMakesALessSureVerdict() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, 0.97, 0.14)
                .set(DutyFigure.COP_RATIO, 0.97, 0.14)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.HEALTHY);
    assertThat(verdict.confidence()).isLessThan(0.75);
    assertThat(verdict.wouldDecide()).isNotEmpty();
  }

  @Test
  void soundPressuresAndPowerWithoutHeatAreHealthyWithLessConfidence() {
    Verdict verdict =
        verdict(
            AtDuty.sound()
                .without(
                    DutyFigure.HEAT,
                    DutyFigure.HEAT_RATIO,
                    DutyFigure.COP_RATIO,
                    DutyFigure.FLOW,
                    DutyFigure.AIR_FLOW)
                .evidence());
    assertThat(verdict.side()).isEqualTo(Side.HEALTHY);
    assertThat(verdict.confidence()).isEqualTo(0.6);
    assertThat(verdict.wouldDecide().get(0)).startsWith("clip a flow meter");
  }

  @Test
  void twoThermometersDecideNothing() {
    Verdict verdict = verdict(AtDuty.sound().only(DutyFigure.RISE, DutyFigure.WATER_IN).evidence());
    assertThat(verdict.side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict.because())
        .containsExactly("no rule fired, but too little is measured to call the heater sound");
  }

  /** Whoever is told of the pool wants to know whether the heater is good, or what it ails of. */
  @Test
  void aPoolThatLosesHeatLeavesTheHeaterItsWord() {
    AtDuty odd = AtDuty.sound().set(DutyFigure.SUPERHEAT, 11.5, 0.8);
    Verdict one = ofPool(odd.evidence());
    assertThat(one.side()).isEqualTo(Side.POOL);
    assertThat(one.because())
        .containsExactly(
            "heat-loss: evidence of heat-loss",
            "the heater itself: heat is 99 ± 7 % of the nameplate's at these conditions");
    Verdict both = ofPool(odd.set(DutyFigure.SUBCOOLING, 0.5, 0.6).evidence());
    assertThat(both.side()).isEqualTo(Side.POOL);
    assertThat(both.because())
        .containsExactly(
            "heat-loss: evidence of heat-loss",
            "the heater itself: heat is 99 ± 7 % of the nameplate's at these conditions; but"
                + " superheat 11.5 K (sound: 2.0 K to 9.0 K); but subcooling 0.5 K (sound: 2.0 K to"
                + " 7.0 K)");
    assertThat(both.wouldDecide().toString()).contains("look at it", "may lack refrigerant");
    Evidence evidence = odd.evidence();
    Verdict told =
        reasoning(evidence)
            .verdict(
                List.of(
                    flag("heat-loss", Side.POOL, 0, 60),
                    flag("high-heater-flow", Side.WATER, 0, 60)));
    assertThat(told.because().toString()).doesNotContain("superheat");
  }

  private static Reasoning reasoning(Evidence evidence) {
    return new Reasoning(evidence, new FlagSides(evidence));
  }

  private static Verdict ofPool(Evidence evidence) {
    return reasoning(evidence).verdict(List.of(flag("heat-loss", Side.POOL, 0, 60)));
  }

  @Test
  void nothingSeenRunningDecidesNothing() {
    Evidence nothing = readings(RunBuilder.run().off(30).recording());
    assertThat(verdict(nothing).side()).isEqualTo(Side.UNDECIDED);
    assertThat(verdict(nothing).because()).contains("the compressor was not seen running");
  }

  @Test
  void aRigOfWhichNothingIsKnownFailsNoRule() {
    assertThat(Judgement.of(AtDuty.sound(Rigs.bare()).evidence()).missing()).isNotEmpty();
  }

  @Test
  void everyRuleHasAWeightAndEveryConsequenceIsARule() {
    Set<String> ids = Rules.all().stream().map(Rule::id).collect(Collectors.toSet());
    assertThat(FlagWeight.byRule().keySet()).containsExactlyInAnyOrderElementsOf(ids);
    ConsequenceTable.explained()
        .forEach(
            (cause, row) -> {
              List<String> following = row.stream().map(Consequent::rule).toList();
              assertThat(ids).contains(cause);
              assertThat(ids).containsAll(following);
              assertThat(following).doesNotHaveDuplicates();
              assertThat(following).doesNotContain(cause);
            });
  }
}
