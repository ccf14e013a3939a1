package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.scenario.AtDuty;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * What one cause cannot do stands beside it as a second one. The typical rig asks for 90 L/min, and
 * sound condensers stay under 11 K at full load (common practice).
 */
class SecondCauseTest {
  private static final double L_PER_MIN = 1e-3 / 60;

  private static List<String> roots(AtDuty running, List<Flag> flags) {
    return Consequences.fold(FlagsOfRun.of(flags, running.evidence())).stream()
        .map(Flag::rule)
        .toList();
  }

  private static List<Flag> during(Duty duty, String... rules) {
    return Arrays.stream(rules).map(rule -> flag(rule, duty.startMs(), duty.endMs())).toList();
  }

  private static Flag flag(String rule, long startMs, long endMs) {
    return new Flag(
        rule,
        Side.WATER,
        Severity.WARNING,
        startMs,
        endMs,
        "evidence of " + rule,
        List.of(),
        "look at it",
        Set.of());
  }

  private static List<String> atLittleWater(double litresPerMinute, double approachK) {
    AtDuty running =
        AtDuty.sound()
            .set(DutyFigure.FLOW, litresPerMinute * L_PER_MIN, L_PER_MIN)
            .set(DutyFigure.LOAD, 1, 0.03)
            .set(DutyFigure.CONDENSER_APPROACH, approachK, 0.4);
    return roots(running, during(running.duty(), "condenser-approach", "low-heater-flow"));
  }

  /** At 60 of 90 L/min the heat transfer is down to 0.72 at most, so 11 K become 15. */
  @Test
  void littleWaterWidensTheApproachByNoMoreThanItTakesOfTheHeatTransfer() {
    assertThat(atLittleWater(60, 14)).containsExactly("low-heater-flow");
    assertThat(atLittleWater(60, 19)).containsExactly("condenser-approach", "low-heater-flow");
    assertThat(atLittleWater(30, 19)).containsExactly("low-heater-flow");
  }

  /** A starved compressor draws less. */
  @Test
  void aCoilShortOfAirExplainsNoPowerAboveTheNameplates() {
    AtDuty running = AtDuty.sound().set(DutyFigure.POWER_RATIO, 1.6, 0.05);
    assertThat(
            roots(
                running,
                during(running.duty(), "condenser-approach", "air-recirculation", "low-cop")))
        .containsExactly("condenser-approach", "air-recirculation");
    assertThat(roots(running, during(running.duty(), "air-recirculation", "low-cop")))
        .containsExactly("air-recirculation", "low-cop");
    AtDuty sound = AtDuty.sound();
    assertThat(roots(sound, during(sound.duty(), "air-recirculation", "low-cop")))
        .containsExactly("air-recirculation");
  }

  /** A filter that loads up takes nothing of the heat on its first hour. */
  @Test
  void heatThatWasLowBeforeTheFlowFellHasACauseOfItsOwn() {
    AtDuty night = AtDuty.sound().lasting(120).then().lasting(400);
    List<Duty> hours = night.evidence().duty();
    long from = hours.get(0).startMs();
    long to = hours.get(1).endMs();
    Flag fall = flag("falling-flow", from, to);
    assertThat(roots(night, List.of(fall, flag("low-heat", from, to))))
        .containsExactly("falling-flow", "low-heat");
    assertThat(roots(night, List.of(fall, flag("low-heat", hours.get(1).startMs(), to))))
        .containsExactly("falling-flow");
    // One stretch over all of it does not tell when the heat was lost.
    AtDuty whole = AtDuty.sound().lasting(520);
    assertThat(roots(whole, during(whole.duty(), "falling-flow", "low-heat")))
        .containsExactly("falling-flow");
    // Nor is it without the water, if that was too little from the beginning.
    assertThat(
            roots(
                night,
                List.of(fall, flag("low-heat", from, to), flag("low-heater-flow", from, to))))
        .containsExactly("falling-flow", "low-heater-flow");
  }
}
