package heatwake.analysis.startup;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.StartupCheck.Item;
import heatwake.analysis.finding.StartupCheck.Result;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A start-up as a technician goes through it, and what the list says of it. */
class StartupListTest {

  /** Pump on, wait, heat for an hour, pump off and on again, heat to the set temperature. */
  private static RunBuilder wholeStartUp() {
    return RunBuilder.run()
        .off(12)
        .circulating(12)
        .fan(0.5)
        .heating(60)
        .set(Channel.FLOW_HEATER, 0)
        .set(Channel.FLOW_SWITCH, 0)
        .set(Channel.PUMP_ON, 0)
        .heating(0.1)
        .free(Channel.FLOW_HEATER)
        .free(Channel.FLOW_SWITCH)
        .free(Channel.PUMP_ON)
        .off(3)
        .circulating(4)
        .fan(0.5)
        .pool(27.9)
        .heating(20)
        .circulating(15);
  }

  private static StartupCheck look(RunBuilder run, Item item) {
    List<StartupCheck> list = Analysis.of(run.recording()).startup();
    assertThat(list).extracting(StartupCheck::check).containsExactly(Item.values());
    return list.stream().filter(check -> check.check() == item).findFirst().orElseThrow();
  }

  private static void assertSays(RunBuilder run, Item item, Result result, String evidence) {
    StartupCheck check = look(run, item);
    assertThat(check.evidence()).matches(evidence);
    assertThat(check.result()).isEqualTo(result);
    assertThat(check.atMs().isPresent()).isEqualTo(result == Result.PASS || result == Result.FAIL);
  }

  @Test
  void probeZero() {
    assertSays(
        wholeStartUp(),
        Item.PROBE_ZERO,
        Result.PASS,
        "water-out less water-in -?0\\.0\\d ± 0\\.\\d\\d K at rest; up to 0\\.\\d\\d K is allowed");
    assertSays(
        RunBuilder.run().heating(20),
        Item.PROBE_ZERO,
        Result.NOT_SEEN,
        "let water circulate for 10 min with the compressor at rest");
    assertSays(
        RunBuilder.run().only(Channel.POWER).heating(5),
        Item.PROBE_ZERO,
        Result.NOT_MEASURED,
        "no water-in and water-out pair");
  }

  /**
   * R-410A at 24 Cel: 1.609 MPa absolute (bubble, interpolated in the published table 20/25 Cel).
   */
  @Test
  void standingPressure() {
    assertSays(
        wholeStartUp(),
        Item.STANDING_PRESSURE,
        Result.PASS,
        "1\\.51 MPa standing; saturation at 24\\.0 °C air is 1\\.5[01] MPa, allowed 1\\.\\d\\d MPa"
            + " to \\d\\.\\d\\d MPa");
    assertSays(
        RunBuilder.run().set(Channel.PRESSURE_DISCHARGE, 600).off(12).circulating(5).heating(10),
        Item.STANDING_PRESSURE,
        Result.FAIL,
        "0\\.60 MPa standing; .*");
    assertSays(
        RunBuilder.run().heating(20),
        Item.STANDING_PRESSURE,
        Result.NOT_SEEN,
        "pressures with the compressor at rest for 10 min");
    assertSays(
        wholeStartUp().rig(Rigs.bare()),
        Item.STANDING_PRESSURE,
        Result.NOT_MEASURED,
        "no heater.refrigerant in the rig to compare the pressure with");
  }

  @Test
  void flowMade() {
    assertSays(
        wholeStartUp(),
        Item.FLOW_MADE,
        Result.PASS,
        "water began to move, flow-heater 150 L/min; flow switch closed");
    assertSays(
        RunBuilder.run().set(Channel.PUMP_ON, 1).off(10),
        Item.FLOW_MADE,
        Result.FAIL,
        "pump on for 10 min, no water moved");
    assertSays(RunBuilder.run().off(10), Item.FLOW_MADE, Result.NOT_SEEN, "water moving");
  }

  @Test
  void fanAndCompressorStart() {
    assertSays(
        wholeStartUp(),
        Item.FAN_START,
        Result.PASS,
        "fan on at 15\\d W, 12 min after water was there");
    assertSays(
        wholeStartUp(),
        Item.COMPRESSOR_START,
        Result.PASS,
        "compressor on (29|30|31) s after the fan, drawing 2\\.7 kW");
    assertSays(
        RunBuilder.run().off(5).circulating(5).fan(30),
        Item.COMPRESSOR_START,
        Result.FAIL,
        "Fan ran without the compressor starting for 30 min .*");
    assertSays(
        RunBuilder.run().heating(20),
        Item.COMPRESSOR_START,
        Result.NOT_SEEN,
        "the compressor ran when the readings began");
  }

  @Test
  void pressureRise() {
    assertSays(
        wholeStartUp(), Item.PRESSURE_RISE, Result.PASS, "1\\.51 to 2\\.30 MPa in 1[12]\\d s");
    assertSays(
        RunBuilder.run()
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1560)
            .heatingAt(Channel.PRESSURE_SUCTION, 1500)
            .off(12)
            .circulating(5)
            .heating(10),
        Item.PRESSURE_RISE,
        Result.FAIL,
        "1\\.51 to 1\\.56 MPa in \\d+ s; a sound compressor raises it by 10 %");
  }

  @Test
  void temperatureRiseAndHeaterFlow() {
    assertSays(
        wholeStartUp(),
        Item.TEMPERATURE_RISE,
        Result.PASS,
        "rise 1\\.60 ± 0\\.\\d\\d K at 150 L/min");
    assertSays(
        wholeStartUp(),
        Item.HEATER_FLOW,
        Result.PASS,
        "150 L/min through the heater; nameplate 90 to 200 L/min");
    assertSays(
        RunBuilder.run().heatingAt(Channel.FLOW_HEATER, 60).circulating(12).heating(40),
        Item.HEATER_FLOW,
        Result.FAIL,
        "60 L/min through the heater; nameplate 90 to 200 L/min");
    assertSays(
        RunBuilder.run().without(Channel.FLOW_HEATER).circulating(12).heating(40),
        Item.HEATER_FLOW,
        Result.NOT_MEASURED,
        "no reading that gives the flow through the heater; clip flow-heater, or flow-total and"
            + " water-return");
    assertSays(
        RunBuilder.run().without(Channel.FLOW_HEATER).circulating(12).heating(40),
        Item.TEMPERATURE_RISE,
        Result.PASS,
        "rise 1\\.60 ± 0\\.\\d\\d K");
  }

  @Test
  void currentAndVoltage() {
    assertSays(
        wholeStartUp(),
        Item.CURRENT,
        Result.PASS,
        "12\\.2 A running; nameplate 16\\.0 A; 80 % of the 20 A breaker 16\\.0 A");
    assertSays(
        wholeStartUp(), Item.VOLTAGE, Result.PASS, "230 V at rest, 230 V running, nominal 230 V");
    assertSays(
        RunBuilder.run().set(Channel.VOLTAGE, 190).circulating(10).heating(10),
        Item.VOLTAGE,
        Result.FAIL,
        "Supply at 190 V for 20 min, 17 % below nominal 230 V; 10 % are allowed");
  }

  @Test
  void ratedHeat() {
    assertSays(
        wholeStartUp(),
        Item.RATED_HEAT,
        Result.PASS,
        "16\\.\\d kW, \\d+ ± \\d+ % of the nameplate's heat at 24\\.0 °C air and 26\\.0 °C water");
    assertSays(
        wholeStartUp().rig(Rigs.bare()),
        Item.RATED_HEAT,
        Result.NOT_MEASURED,
        "no \\[\\[heater.rating\\]\\] in the rig to compare the heat with");
  }

  @Test
  void stopsOnLostFlowAndWaits() {
    assertSays(
        wholeStartUp(),
        Item.FLOW_LOSS_STOP,
        Result.PASS,
        "compressor stopped \\d s after the water");
    assertSays(
        RunBuilder.run()
            .circulating(12)
            .heating(30)
            .set(Channel.FLOW_HEATER, 0)
            .set(Channel.FLOW_SWITCH, 0)
            .heating(3)
            .off(10),
        Item.FLOW_LOSS_STOP,
        Result.FAIL,
        "compressor stopped 3 min after the water; it should within 30 s");
    assertSays(
        RunBuilder.run().circulating(12).heating(30),
        Item.FLOW_LOSS_STOP,
        Result.NOT_SEEN,
        "switch the pump off while the heater runs");
    assertSays(
        wholeStartUp(),
        Item.RESTART_DELAY,
        Result.PASS,
        "restarted [78] min after a stop; the restart delay is 4 min");
  }

  @Test
  void setpointStop() {
    assertSays(
        wholeStartUp(),
        Item.SETPOINT_STOP,
        Result.PASS,
        "stopped with the water at 27\\.9 °C; set are 28\\.0 °C");
    assertSays(
        RunBuilder.run().circulating(12).heating(30),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        "a stop with the water at the set 28\\.0 °C");
  }
}
