package heatwake.analysis.electric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Power from current: P = U I cos phi on one phase, root of three times that between two of three
 * phases, three times that between one of them and neutral (textbook). Here 8 A and cos phi 0.93;
 * an hour's running, so the energy in kWh is the power in kW.
 */
class ElectricityTest {
  private static Rig at(OptionalDouble nominalV) {
    Heater typical = Rigs.typicalHeater();
    return Rigs.withHeater(
        new Heater(
            typical.label(),
            typical.refrigerant(),
            typical.flowMinM3PerS(),
            typical.flowMaxM3PerS(),
            nominalV,
            typical.currentMaxA(),
            typical.breakerA(),
            typical.restartDelayS(),
            typical.pressureMaxPa(),
            typical.speed(),
            typical.ratings().stream()
                .map(
                    one ->
                        new Rating(
                            one.airK(),
                            one.humidity(),
                            one.waterK(),
                            one.heatW(),
                            OptionalDouble.of(2 * one.powerW().orElseThrow())))
                .toList()));
  }

  private static RunBuilder running(Rig rig) {
    return RunBuilder.run()
        .rig(rig)
        .without(Channel.POWER, Channel.ENERGY)
        .with(Channel.CURRENT, Channel.VOLTAGE)
        .heatingAt(Channel.CURRENT, 8);
  }

  private static double kilowattHours(RunBuilder run) {
    HeatFigures heat = Analysis.of(run.off(5).circulating(5).heating(60).recording()).heat();
    return heat.electricJ().orElseThrow().value() / 3.6e6;
  }

  /** A supply of 400 V that sags to 340 V: half of its readings lie under any limit there. */
  @Test
  void aSaggingSupplyKeepsItsThreePhases() {
    double energy =
        kilowattHours(
            running(at(OptionalDouble.of(400)))
                .heatingAt(Channel.VOLTAGE, 340)
                .noise(Channel.VOLTAGE, 4));
    assertThat(energy).isCloseTo(Math.sqrt(3) * 340 * 8 * 0.93 / 1e3, within(0.03));
  }

  /** The same where the rig states no nominal voltage: the run's level decides. */
  @Test
  void theRunsLevelDecidesWhereNoneIsStated() {
    double energy =
        kilowattHours(
            running(at(OptionalDouble.empty()))
                .heatingAt(Channel.VOLTAGE, 340)
                .noise(Channel.VOLTAGE, 4));
    assertThat(energy).isCloseTo(Math.sqrt(3) * 340 * 8 * 0.93 / 1e3, within(0.03));
  }

  @Test
  void oneSurgeMakesNoThreePhases() {
    double energy =
        kilowattHours(
            running(at(OptionalDouble.empty()))
                .heatingAt(Channel.VOLTAGE, 240)
                .change(Channel.VOLTAGE, (s, volt) -> s % 60 < 4 ? 350 : volt));
    assertThat(energy).isBetween(0.235 * 8 * 0.93, 0.251 * 8 * 0.93);
  }

  @Test
  void aPhaseAgainstNeutralIsAThirdOfThree() {
    double energy =
        kilowattHours(running(at(OptionalDouble.of(400))).heatingAt(Channel.VOLTAGE, 231));
    assertThat(energy).isCloseTo(3 * 231 * 8 * 0.93 / 1e3, within(0.03));
  }

  @Test
  void nominalVoltageStandsInForAProbe() {
    double energy = kilowattHours(running(at(OptionalDouble.of(400))).without(Channel.VOLTAGE));
    assertThat(energy).isCloseTo(Math.sqrt(3) * 400 * 8 * 0.93 / 1e3, within(0.03));
  }

  /** An ammeter good to 0.5 A: root of three x 400 V x 0.5 A x 0.93 = 322 W at any load. */
  @Test
  void theAmmetersErrorIsOfAllPhases() {
    for (OptionalDouble nominal :
        new OptionalDouble[] {OptionalDouble.of(400), OptionalDouble.empty()}) {
      Rig rig = Rigs.withProbe(at(nominal), Channel.CURRENT, new ReadingUncertainty.Absolute(0.5));
      var recording = running(rig).heatingAt(Channel.VOLTAGE, 400).off(5).heating(10).recording();
      Optional<ElectricStream> power = Electricity.of(recording, Timeline.of(recording)).power();
      assertThat(power.orElseThrow().uncertainty().absolute()).isCloseTo(322, within(1.0));
    }
  }

  /**
   * Runs of four minutes, metered each second, counted every five minutes: each is 2.7 kW for 240 s
   * and 12 W for the 3 min after it, 0.181 kWh; between two counts half of it would be smeared.
   */
  @Test
  void aCounterReadSeldomLeavesShortRunsToThePowerMeter() {
    RunBuilder run =
        RunBuilder.run()
            .with(Channel.ENERGY)
            .change(Channel.ENERGY, (atS, kwh) -> atS % 300 == 0 ? kwh : Double.NaN)
            .circulating(10);
    for (int k = 0; k < 20; k++) {
      run.heating(4).circulating(5);
    }
    assertThat(Analysis.of(run.recording()).heat().electricJ().orElseThrow().value() / 3.6e6)
        .isCloseTo(20 * 0.181, within(0.03));
  }
}
