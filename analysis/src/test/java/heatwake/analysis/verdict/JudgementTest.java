package heatwake.analysis.verdict;

import static heatwake.analysis.rule.RuleAssert.readings;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Rules;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The road from rules to verdict: silencing, consequences, sides, confidence. */
class JudgementTest {
  private static final double L_PER_MIN = 1e-3 / 60;

  private static Flag flag(String rule, Side side, long fromMin, long toMin, Channel... channels) {
    return new Flag(
        rule,
        side,
        Severity.WARNING,
        fromMin * 60_000,
        toMin * 60_000,
        "evidence of " + rule,
        List.of(),
        "look at it",
        Set.of(channels));
  }

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

  private static Flag alarm(Flag flag) {
    return new Flag(
        flag.rule(),
        flag.side(),
        Severity.ALARM,
        flag.startMs(),
        flag.endMs(),
        flag.evidence(),
        flag.causes(),
        flag.nextCheck(),
        flag.channels());
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

  // Consequences.

  private static List<Flag> fold(List<Flag> flags, List<Duty> duties, Heater heater) {
    return Consequences.fold(new FlagsOfRun(flags, duties, List.of(), heater));
  }

  /** What its own switch cuts short is more than an approach that goes with it. */
  @Test
  void aHighPressureThatStopsTheCompressorStandsByItself() {
    List<Flag> flags =
        List.of(
            flag("condenser-approach", Side.REFRIGERANT, 10, 60),
            flag("high-pressure", Side.REFRIGERANT, 10, 60));
    assertThat(rules(folded(flags, stopAt(30)))).containsExactly("condenser-approach");
    assertThat(rules(folded(flags, stopAt(30), stopAt(70)))).containsExactly("condenser-approach");
    assertThat(rules(folded(flags, stopAt(30), stopAt(60))))
        .containsExactly("condenser-approach", "high-pressure");
  }

  private static List<Flag> folded(List<Flag> flags, Cycle... cycles) {
    return Consequences.fold(new FlagsOfRun(flags, List.of(), List.of(cycles), Heater.UNKNOWN));
  }

  private static Cycle stopAt(long minute) {
    return new Cycle(
        (minute - 5) * 60_000, OptionalLong.of(minute * 60_000), OptionalLong.empty(), true);
  }

  @Test
  void oneCauseGivesOneFlagThatNamesWhatFollows() {
    List<Flag> roots =
        fold(
            List.of(
                flag("high-pressure", Side.REFRIGERANT, 10, 500),
                flag("low-heater-flow", Side.WATER, 5, 600),
                flag("condenser-approach", Side.WATER, 10, 500),
                flag("low-cop", Side.UNDECIDED, 10, 500)),
            List.of(),
            Heater.UNKNOWN);
    assertThat(rules(roots)).containsExactly("low-heater-flow");
    assertThat(roots.get(0).evidence())
        .isEqualTo(
            "evidence of low-heater-flow. Follows from it: high-pressure (evidence of"
                + " high-pressure); condenser-approach (evidence of condenser-approach); low-cop"
                + " (evidence of low-cop)");
    assertThat(roots.get(0).consequences())
        .containsExactly(
            new Consequence("high-pressure", "evidence of high-pressure"),
            new Consequence("condenser-approach", "evidence of condenser-approach"),
            new Consequence("low-cop", "evidence of low-cop"));
  }

  /** Little water raises the condensing pressure, against which the motor draws more. */
  @Test
  void littleWaterExplainsTheCurrentItBrings() {
    assertThat(
            rules(
                fold(
                    List.of(
                        flag("overcurrent", Side.ELECTRICAL, 10, 500),
                        flag("condenser-approach", Side.WATER, 10, 500),
                        flag("low-heater-flow", Side.WATER, 5, 600)),
                    List.of(),
                    Heater.UNKNOWN)))
        .containsExactly("low-heater-flow");
  }

  /** Where the circuit condenses no higher, the current has a cause of its own. */
  @Test
  void littleWaterThatLiftsNoPressureExplainsNoCurrent() {
    for (String littleWater : List.of("low-heater-flow", "falling-flow")) {
      assertThat(
              rules(
                  fold(
                      List.of(
                          flag("overcurrent", Side.ELECTRICAL, 10, 500),
                          flag(littleWater, Side.WATER, 5, 600)),
                      List.of(),
                      Heater.UNKNOWN)))
          .containsExactly("overcurrent", littleWater);
    }
  }

  @Test
  void whatThePoolLosesIsNoConsequenceOfTheMachine() {
    assertThat(
            rules(
                fold(
                    List.of(
                        flag("falling-flow", Side.WATER, 5, 600),
                        flag("heat-loss", Side.POOL, 0, 600)),
                    List.of(),
                    Heater.UNKNOWN)))
        .containsExactly("falling-flow", "heat-loss");
  }

  @Test
  void aCauseExplainsOnlyWhatHappenedWithIt() {
    assertThat(
            rules(
                fold(
                    List.of(
                        flag("low-heater-flow", Side.WATER, 5, 60),
                        flag("low-heat", Side.UNDECIDED, 100, 500)),
                    List.of(),
                    Heater.UNKNOWN)))
        .containsExactly("low-heater-flow", "low-heat");
  }

  @Test
  void flowThatFellBelowTheMinimumIsTheFiltersDoing() {
    assertThat(
            rules(
                fold(
                    List.of(
                        flag("falling-flow", Side.WATER, 0, 600),
                        flag("low-heater-flow", Side.WATER, 300, 600)),
                    List.of(),
                    Heater.UNKNOWN)))
        .containsExactly("falling-flow");
    assertThat(
            rules(
                fold(
                    List.of(
                        flag("falling-flow", Side.WATER, 0, 600),
                        flag("low-heater-flow", Side.WATER, 5, 600)),
                    List.of(),
                    Heater.UNKNOWN)))
        .containsExactly("falling-flow", "low-heater-flow");
  }

  @Test
  void theGravestOfTheConsequencesCounts() {
    Flag alarm =
        new Flag("high-pressure", Side.REFRIGERANT, Severity.ALARM, 0, 60_000, "x", List.of(), "y");
    assertThat(
            fold(
                    List.of(alarm, flag("low-heater-flow", Side.WATER, 0, 10)),
                    List.of(),
                    Heater.UNKNOWN)
                .get(0)
                .severity())
        .isEqualTo(Severity.ALARM);
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
