package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Draw above a fan's that is no compressor; stories by hand. Common practice: pool pumps draw 0.2
 * to 1.5 kW, a compressor heats the water and parts the pressures within a minute or two, a fan
 * draws 5 to 15 % of a heater, of small ones up to a quarter.
 */
class IdleDrawTest {
  private static final double PUMP_W = 950;

  /** A pump on the heater's meter runs whenever water moves. */
  private static RunBuilder withPump() {
    return RunBuilder.run()
        .heatingAt(Channel.POWER, 2700 + PUMP_W)
        .change(Channel.POWER, (atS, watts) -> watts < 1000 ? watts + PUMP_W : watts);
  }

  private static Phases phasesOf(RunBuilder run) {
    Recording recording = run.recording();
    return Phases.of(Timeline.of(recording), recording);
  }

  private static List<String> flagsOf(RunBuilder run) {
    return Analysis.of(run.recording()).flags().stream().map(Flag::rule).toList();
  }

  private static List<Phase> order(Phases phases) {
    return phases.spans().stream()
        // The pump's flow runs down for some seconds.
        .filter(span -> span.durationS() > 15)
        .map(PhaseSpan::phase)
        .filter(phase -> phase != Phase.STARTING && phase != Phase.FAN)
        .toList();
  }

  /**
   * Valves that do not close: the compressor draws half, starts with the water as seen every 30 s,
   * and parts no pressures. Its discharge line warms all the same.
   */
  @Test
  void aCompressorThatPumpsNothingIsNoPump() {
    assertThat(flagsOf(idles(38))).contains("no-pressure-rise");
  }

  /** A pump of this draw warms nothing. */
  @Test
  void aLineThatStaysColdIsNoCompressors() {
    assertThat(flagsOf(idles(25))).doesNotContain("no-pressure-rise");
    assertThat(phasesOf(idles(25)).cycles()).isEmpty();
  }

  private static RunBuilder idles(double lineCel) {
    return RunBuilder.run()
        .every(30)
        .only(
            Channel.WATER_IN,
            Channel.WATER_OUT,
            Channel.FLOW_HEATER,
            Channel.POWER,
            Channel.PRESSURE_DISCHARGE,
            Channel.PRESSURE_SUCTION,
            Channel.TEMP_DISCHARGE,
            Channel.AIR_IN)
        .off(6)
        .change(Channel.POWER, (atS, watts) -> atS < 420 ? 5 : 1450)
        .change(
            Channel.TEMP_DISCHARGE,
            (atS, cel) -> 24 + (atS < 420 ? 0 : (lineCel - 24) * (1 - Math.exp((420 - atS) / 120))))
        .circulating(80);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 10, 30})
  void aPumpOnTheMeterIsNoCompressor(int everyS) {
    RunBuilder run = withPump().every(everyS).circulating(15).heating(60).circulating(30);
    Phases phases = phasesOf(run);
    assertThat(order(phases)).containsExactly(Phase.CIRCULATING, Phase.STEADY, Phase.CIRCULATING);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.cycles().get(0).startMs() - run.recording().startMs())
        .isBetween(900_000L - 1000L * everyS, 905_000L + 1000L * everyS);
    assertThat(flagsOf(run)).isEmpty();
  }

  /** With the temperatures of the water alone beside the power. */
  @Test
  void theRiseTellsItToo() {
    RunBuilder run =
        withPump()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .circulating(15)
            .heating(60)
            .circulating(30);
    assertThat(order(phasesOf(run)))
        .containsExactly(Phase.CIRCULATING, Phase.STEADY, Phase.CIRCULATING);
  }

  /**
   * What stood in the pipes comes past the inlet first: for a minute the outlet seems to warm,
   * though the pump alone runs. The heater is never seen at rest with water moving again.
   */
  @Test
  void standingWaterThatIsFlushedIsNoCompressors() {
    RunBuilder run =
        withPump()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .change(Channel.POWER, (atS, watts) -> watts + (atS < 120 ? 0 : PUMP_W))
            .change(Channel.WATER_IN, (atS, cel) -> cel - stood(1.9, atS, 10))
            .change(Channel.WATER_OUT, (atS, cel) -> cel - stood(2.8, atS, 25))
            .off(2)
            .circulating(13)
            .fan(0.5)
            .heatingAt(Channel.POWER, 2700)
            .heating(240);
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat((phases.cycles().get(0).startMs() - run.recording().startMs()) / 1000)
        .isBetween(920L, 940L);
  }

  private static double stood(double colderK, double atS, double lagS) {
    return atS < 120 ? colderK : colderK * Math.exp((120 - atS) / lagS);
  }

  /** A heater that never starts, its set temperature reached, accuses nobody. */
  @Test
  void aHeaterThatNeverRanRests() {
    RunBuilder run = withPump().pool(28.5).circulating(240);
    Findings findings = Analysis.of(run.recording());
    assertThat(findings.cycles()).isEmpty();
    assertThat(findings.flags()).isEmpty();
    assertThat(order(phasesOf(run))).containsExactly(Phase.CIRCULATING);
  }

  /** A motor that runs and compresses nothing comes from a rest that draws less. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 15})
  void aCompressorWithoutLiftStaysOne(double restMinutes) {
    RunBuilder run =
        RunBuilder.run()
            .heatingAt(Channel.POWER, 1300)
            .heatingAt(Channel.WATER_OUT, 0.05)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1550)
            .heatingAt(Channel.PRESSURE_SUCTION, 1480)
            .circulating(restMinutes)
            .heating(60);
    assertThat(phasesOf(run).cycles()).hasSize(1);
  }

  /** A fan that thaws the coil for a quarter of an hour, at 22 % of the draw. */
  @Test
  void aFanThatThawsIsNoCompressor() {
    RunBuilder run =
        RunBuilder.run()
            .air(3)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .with(Channel.AIR_AMBIENT)
            .change(Channel.POWER, (atS, watts) -> watts > 100 && watts < 200 ? 600 : watts)
            .circulating(10);
    for (int i = 0; i < 4; i++) {
      run.heating(45).fan(14);
    }
    Phases phases = phasesOf(run.heating(45).circulating(5));
    assertThat(phases.cycles()).hasSize(5);
    assertThat(phases.spans()).extracting(PhaseSpan::phase).contains(Phase.FAN);
    assertThat(flagsOf(run)).doesNotContain("low-heat", "low-cop", "frosting");
  }

  /** A compressor that cycles every few minutes is not the usual draw of the run: the pump's is. */
  @Test
  void aPumpBesideShortCyclesIsNoCompressor() {
    RunBuilder run = withPump().every(2).circulating(12);
    for (int k = 0; k < 12; k++) {
      run.heating(3).circulating(9);
    }
    assertThat(phasesOf(run).cycles()).hasSize(12);
    assertThat(flagsOf(run)).contains("short-cycling").doesNotContain("no-pressure-rise");
  }

  /**
   * A pump that draws less than the compressor may, and stops at night: what comes and goes with
   * the water is no fan, and the second start is the compressor's, not the pump's.
   */
  @Test
  void aSmallPumpThatRestsIsNoFan() {
    RunBuilder run = RunBuilder.run().every(2).heatingAt(Channel.POWER, 2700 + 600).off(30);
    run.change(Channel.POWER, (atS, watts) -> watts < 1000 ? watts + 600 : watts);
    run.circulating(12).fan(0.5).heating(60);
    run.change(Channel.POWER, (atS, watts) -> watts).off(120);
    run.change(Channel.POWER, (atS, watts) -> watts < 1000 ? watts + 600 : watts);
    long secondMs = run.circulating(1).nowMs();
    Phases phases = phasesOf(run.heating(60).circulating(20));
    assertThat(order(phases))
        .containsExactly(
            Phase.OFF,
            Phase.CIRCULATING,
            Phase.STEADY,
            Phase.OFF,
            Phase.CIRCULATING,
            Phase.STEADY,
            Phase.CIRCULATING);
    assertThat(phases.cycles().get(1).startMs()).isBetween(secondMs - 10_000, secondMs + 10_000);
  }

  /** The rig's heater gives 16.5 kW: no fan of it takes 900 W, of which yet nothing comes. */
  @Test
  void aDrawBeyondAnyFansIsACompressor() {
    RunBuilder run =
        RunBuilder.run()
            .heatingAt(Channel.POWER, 900)
            .heatingAt(Channel.WATER_OUT, 0.05)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1550)
            .heatingAt(Channel.PRESSURE_SUCTION, 1480)
            .circulating(15)
            .fan(0.5)
            .heating(60);
    assertThat(phasesOf(run).cycles()).hasSize(1);
    assertThat(flagsOf(run)).contains("no-pressure-rise").doesNotContain("no-compressor");
  }

  /** A lamp, and a crankcase heater, by standing water: a quarter of the running heater's draw. */
  @ParameterizedTest
  @ValueSource(ints = {5, 30, 60})
  void aLampByStandingWaterIsNoCompressor(int everyS) {
    RunBuilder run =
        RunBuilder.run()
            .every(everyS)
            .without(Channel.CURRENT)
            .heatingAt(Channel.POWER, 1400)
            .off(10)
            .change(Channel.POWER, (atS, watts) -> watts + 380)
            .off(180)
            .free(Channel.POWER)
            .off(120)
            .circulating(5)
            .heating(120)
            .circulating(20);
    assertThat(phasesOf(run).cycles()).hasSize(1);
    assertThat(flagsOf(run)).doesNotContain("no-flow", "no-pressure-rise", "no-compressor");
  }

  /** A compressor that runs dry draws what it draws. */
  @Test
  void aCompressorByStandingWaterStaysOne() {
    RunBuilder run = RunBuilder.run().circulating(10).heating(60).set(Channel.FLOW_HEATER, 0);
    run.set(Channel.FLOW_SWITCH, 0).set(Channel.PUMP_ON, 0);
    assertThat(flagsOf(run.heating(10))).contains("no-flow");
  }

  /**
   * A turned cycle that draws as little as a thawing fan (some 40 % of the running draw), with the
   * water's temperatures alone beside the power, and hardly a rest in the run.
   */
  @Test
  void aReversedDefrostOfSmallDrawIsNoFan() {
    RunBuilder run =
        RunBuilder.run()
            .every(5)
            .air(4)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .with(Channel.AIR_IN)
            .change(Channel.POWER, (atS, watts) -> watts > 1500 && watts < 2200 ? 1050 : watts)
            .off(10)
            .circulating(1)
            .heating(200);
    for (int i = 0; i < 4; i++) {
      run.defrost(5).heating(35);
    }
    Phases phases = phasesOf(run);
    assertThat(phases.cycles()).hasSize(1);
    assertThat(phases.spans()).filteredOn(span -> span.phase() == Phase.DEFROST).hasSize(4);
    assertThat(Analysis.of(run.recording()).zero()).isEmpty();
    assertThat(flagsOf(run)).doesNotContain("restart-too-soon");
  }

  /**
   * An inverter at a quarter of the plate's current warms the water by less than a pair of 0.3 K
   * each may differ; but the difference goes with the draw.
   */
  @Test
  void aFaintRiseThatGoesWithTheDrawIsACompressors() {
    RunBuilder run = slowInverter(0.65);
    assertThat(phasesOf(run).cycles()).hasSize(1);
    assertThat(flagsOf(run)).doesNotContain("no-compressor");
  }

  /** The same draw without it is no running compressor's. */
  @Test
  void withoutItTheDrawIsNone() {
    assertThat(phasesOf(slowInverter(0)).cycles()).isEmpty();
  }

  /**
   * Heaters of 5 kW at their slowest draw 170 to 330 W, no more than many fans do (common
   * practice), and the rig states no rating. A fan warms no water.
   */
  @ParameterizedTest
  @ValueSource(doubles = {170, 240, 330})
  void aSmallDrawThatWarmsTheWaterIsACompressors(double watts) {
    RunBuilder run = smallHeater(watts, 1.2).circulating(10).fan(0.5).heating(120);
    assertThat(phasesOf(run).cycles()).hasSize(1);
    assertThat(flagsOf(run)).doesNotContain("no-compressor");
  }

  /** What draws so little and warms nothing is the fan. */
  @Test
  void aSmallDrawThatWarmsNothingIsTheFans() {
    RunBuilder run = smallHeater(240, 0).circulating(10).heating(120);
    assertThat(phasesOf(run).cycles()).isEmpty();
    assertThat(flagsOf(run)).contains("no-compressor");
  }

  private static RunBuilder smallHeater(double watts, double riseK) {
    return RunBuilder.run()
        .rig(Rigs.breakerOnly())
        .every(10)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER)
        .change(Channel.POWER, (atS, drawn) -> drawn > 100 && drawn < 160 ? 90 : drawn)
        .heatingAt(Channel.POWER, watts)
        .heatingAt(Channel.WATER_OUT, riseK);
  }

  /**
   * A heater of 0.5 K digits and pipes of 0.3 K each, with a chlorinator of 180 W on its meter:
   * neither its rise nor its draw stands clear, but the defrosts do.
   */
  @Test
  void aRiseThatThePairHidesShowsByTheDefrosts() {
    Phases phases = phasesOf(besideAChlorinator(5));
    assertThat(phases.cycles()).hasSize(1);
    assertThat(Analysis.of(besideAChlorinator(5).recording()).flags())
        .extracting(Flag::rule)
        .doesNotContain("frosting", "restart-too-soon", "no-compressor");
  }

  private static RunBuilder besideAChlorinator(double defrostMinutes) {
    RunBuilder run =
        withCoarsePair()
            .every(30)
            .air(3)
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.FLOW_HEATER)
            .with(Channel.AIR_IN)
            .heatingAt(Channel.POWER, 2000)
            .heatingAt(Channel.WATER_OUT, 0.9)
            .change(
                Channel.POWER,
                (atS, watts) -> watts > 500 && atS % 7200 < 3600 ? watts + 450 : watts)
            .off(60)
            .circulating(0.5);
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      run.resolution(channel, 0.5).noise(channel, 0.1);
    }
    for (int i = 0; i < 6; i++) {
      run.heating(50).defrost(defrostMinutes);
    }
    return run.heating(40).off(60);
  }

  private static RunBuilder withCoarsePair() {
    Rig coarse = Rigs.typical();
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      coarse = Rigs.withProbe(coarse, channel, new ReadingUncertainty.Absolute(0.4));
    }
    return RunBuilder.run().rig(coarse);
  }

  private static RunBuilder slowInverter(double riseK) {
    Rig coarse = Rigs.typical();
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      coarse = Rigs.withProbe(coarse, channel, new ReadingUncertainty.Absolute(0.3));
    }
    return RunBuilder.run()
        .every(5)
        .rig(coarse)
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.CURRENT, Channel.FLOW_SWITCH)
        .heatingAt(Channel.CURRENT, 4)
        .heatingAt(Channel.WATER_OUT, riseK)
        .off(5)
        .circulating(5)
        .heating(120);
  }
}
