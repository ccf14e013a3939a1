package heatwake.analysis.rule.water;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The typical rig's nameplate wants 90 to 200 L/min. */
class LowHeaterFlowTest {
  private static final double L_PER_MIN = 1e-3 / 60;
  private final LowHeaterFlow rule = new LowHeaterFlow();

  private static AtDuty flow(double lPerMin, double standardLPerMin) {
    return AtDuty.sound()
        .set(DutyFigure.FLOW, lPerMin * L_PER_MIN, standardLPerMin * L_PER_MIN)
        .set(DutyFigure.RISE, 3.6, 0.05);
  }

  @Test
  void saysFlowLimitAndNextStep() {
    var flag = onlyFlag(rule, flow(62, 1.3).evidence());
    assertThat(flag.evidence())
        .isEqualTo(
            "Flow 62 L/min is below the heater's 90 L/min minimum for 60 min of steady running, the"
                + " water rises by 3.6 K");
    assertThat(flag.nextCheck())
        .isEqualTo(
            "Open the bypass towards the heater or check the strainer; then see whether the flow"
                + " rises.");
    assertThat(flag.side()).isEqualTo(Side.WATER);
    assertThat(flag.severity()).isEqualTo(Severity.WARNING);
  }

  @Test
  void isAnAlarmBelowHalfTheMinimum() {
    assertThat(onlyFlag(rule, flow(40, 1).evidence()).severity()).isEqualTo(Severity.ALARM);
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    assertClear(rule, AtDuty.sound().evidence());
    assertClear(rule, flow(90, 0).evidence());
    assertClear(rule, flow(88, 0).evidence());
    assertClear(rule, flow(80, 3.4).evidence());
    onlyFlag(rule, flow(80, 3.3).evidence());
  }

  @Test
  void tellsLowFlowFromTheRiseAlone() {
    // 16 kW at 90 L/min is 16000 / (90/60000 x 4.17e6) = 2.56 K.
    var flag =
        onlyFlag(
            rule, AtDuty.sound().without(DutyFigure.FLOW).set(DutyFigure.RISE, 4, 0.1).evidence());
    assertThat(flag.evidence())
        .isEqualTo(
            "The water rises by 4.0 K; even at 90 L/min the expected heat would give only 2.6 K, so"
                + " no more than about 58 L/min goes through the heater");
    assertClear(
        rule, AtDuty.sound().without(DutyFigure.FLOW).set(DutyFigure.RISE, 2.8, 0.1).evidence());
  }

  /** A loose clip in warm air reads as much rise as little water makes (common practice). */
  @Test
  void aRiseAloneNamesTheClipToo() {
    var told = AtDuty.sound().without(DutyFigure.FLOW).set(DutyFigure.RISE, 5.3, 0.1);
    Flag byRise = onlyFlag(rule, told.evidence());
    assertThat(byRise.causes()).anyMatch(cause -> cause.contains("loose"));
    assertThat(byRise.nextCheck()).startsWith("See first that both pipe probes sit tight");
    Flag byFlow =
        onlyFlag(rule, AtDuty.sound().set(DutyFigure.FLOW, 50e-3 / 60, 1e-3 / 60).evidence());
    assertThat(byFlow.causes()).noneMatch(cause -> cause.contains("loose"));
  }

  @Test
  void tellsLowFlowFromTheRiseWithoutAirToo() {
    var told = AtDuty.sound().without(DutyFigure.FLOW, DutyFigure.EXPECTED_HEAT);
    assertThat(onlyFlag(rule, told.set(DutyFigure.RISE, 5.3, 0.1).evidence()).evidence())
        .startsWith(
            "The water rises by 5.3 K; even at 90 L/min the nameplate's heat in the best air would"
                + " give only ");
    assertClear(
        rule,
        AtDuty.sound()
            .without(DutyFigure.FLOW, DutyFigure.EXPECTED_HEAT)
            .set(DutyFigure.RISE, 2.9, 0.1)
            .evidence());
  }

  @Test
  void withoutStatedMinimumAllowsARiseOfSixKelvin() {
    // 16.5 kW over 6 K is 16500 / (6 x 4.17e6) m3/s = 39.6 L/min.
    assertThat(
            onlyFlag(
                    rule,
                    AtDuty.sound(ratedOnly()).set(DutyFigure.FLOW, 30 * L_PER_MIN, 0).evidence())
                .evidence())
        .startsWith(
            "Flow 30 L/min is below 40 L/min, the flow at which the rated heat warms the water by"
                + " 6.0 K");
  }

  private static Rig ratedOnly() {
    var typical = Rigs.typicalHeater();
    var none = OptionalDouble.empty();
    return Rigs.withHeater(
        new Heater(
            "unit",
            typical.refrigerant(),
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            typical.speed(),
            typical.ratings()));
  }

  @Test
  void seesAHeaterThatTripsBeforeItRunsSteadily() {
    RunBuilder run = RunBuilder.run().set(Channel.FLOW_HEATER, 45).off(5).circulating(5);
    for (int i = 0; i < 6; i++) {
      run.heating(3).circulating(4);
    }
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "Flow 45 L/min is below the heater's 90 L/min minimum; the heater never came to steady"
                + " running");
  }

  /** Runs of a minute, as of a high-pressure switch, leave no time for a mean of a steady flow. */
  @Test
  void seesItInRunsOfAMinute() {
    assertThat(onlyFlag(rule, readings(tripping(45).recording())).evidence())
        .isEqualTo(
            "Flow 45 L/min is below the heater's 90 L/min minimum in 4 of 4 compressor runs, all too"
                + " short to become steady");
    assertClear(rule, readings(tripping(95).recording()));
  }

  private static RunBuilder tripping(double lPerMin) {
    RunBuilder run = RunBuilder.run().set(Channel.FLOW_HEATER, lPerMin).off(5).circulating(5);
    for (int i = 0; i < 4; i++) {
      run.heating(70.0 / 60).circulating(5);
    }
    return run;
  }

  /** The flow switch opens within seconds of the fall; common practice. */
  private static RunBuilder fallsTo(double poolCel, double lPerMin, double minutes) {
    return RunBuilder.run()
        .every(10)
        .pool(poolCel)
        .circulating(10)
        .heating(90)
        .set(Channel.FLOW_HEATER, lPerMin)
        .circulating(minutes);
  }

  @Test
  void saysThatTheFallOfTheFlowStoppedTheHeater() {
    Flag flag = onlyFlag(rule, readings(fallsTo(26, 35, 120).recording()));
    assertThat(flag.evidence())
        .isEqualTo(
            "Flow fell from 150 L/min to 35 L/min at 2031-05-04 19:40 UTC, under the heater's 90"
                + " L/min minimum, and the heater stopped with it; it did not run for 2.0 h then,"
                + " with the water 2.0 K below the set temperature");
    assertThat(flag.severity()).isEqualTo(Severity.ALARM);
    assertThat(
            onlyFlag(
                    rule,
                    readings(
                        fallsTo(26, 60, 60).free(Channel.FLOW_HEATER).circulating(60).recording()))
                .evidence())
        .contains("it did not run for 60 min then");
  }

  /** A pump that is slowed once the heater is satisfied, backwash, and the pump's hours. */
  @Test
  void aSetbackABackwashAndAStoppedPumpAreNoLowFlow() {
    assertClear(rule, readings(fallsTo(27.6, 35, 120).recording()));
    assertClear(rule, readings(fallsTo(26, 105, 120).recording()));
    assertClear(
        rule, readings(fallsTo(26, 35, 12).free(Channel.FLOW_HEATER).heating(60).recording()));
    assertClear(
        rule, readings(RunBuilder.run().pool(26).circulating(10).heating(90).off(120).recording()));
    assertClear(
        rule,
        readings(
            RunBuilder.run()
                .pool(26)
                .circulating(10)
                .heating(90)
                .circulating(10)
                .set(Channel.FLOW_HEATER, 35)
                .circulating(120)
                .recording()));
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(reason(rule, AtDuty.sound(Rigs.bare()).evidence()))
        .isEqualTo("neither heater.flow-min nor a rated heat in the rig");
    assertThat(reason(rule, AtDuty.sound().only(DutyFigure.POWER).evidence()))
        .isEqualTo("no flow through the heater known while water runs");
  }

  /** A spa warms too fast to be steady; the meter tells all the same. */
  @Test
  void theMeterTellsItWithoutSteadyRunning() {
    var flag = onlyFlag(rule, readings(spa(60, 20).recording()));
    assertThat(flag.evidence())
        .startsWith("Flow 60 L/min is below the heater's 90 L/min minimum for ")
        .endsWith(" with the compressor on");
  }

  @Test
  void aFewMinutesOfLittleWaterOrEnoughOfItAreClear() {
    assertClear(rule, readings(spa(60, 6).recording()));
    assertClear(rule, readings(spa(95, 20).recording()));
  }

  private static RunBuilder spa(double lPerMin, int minutes) {
    RunBuilder run = RunBuilder.run().off(5).circulating(10).heating(30);
    run.heatingAt(Channel.FLOW_HEATER, lPerMin);
    for (int k = 0; k < minutes; k++) {
      run.pool(26 + 0.1 * k).heating(1);
    }
    return run.heatingAt(Channel.FLOW_HEATER, 150).heating(30);
  }
}
