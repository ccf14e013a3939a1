package heatwake.analysis.verdict;

import static heatwake.analysis.verdict.RaisedFlags.flag;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.site.Heater;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** One cause, and the flags that only follow from it. */
class ConsequencesTest {
  private static List<String> rules(List<Flag> flags) {
    return flags.stream().map(Flag::rule).toList();
  }

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
}
