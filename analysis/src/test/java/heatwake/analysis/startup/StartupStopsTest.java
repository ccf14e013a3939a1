package heatwake.analysis.startup;

import static heatwake.analysis.startup.StartUp.assertSays;
import static heatwake.analysis.startup.StartUp.wholeStartUp;

import heatwake.analysis.finding.StartupCheck.Item;
import heatwake.analysis.finding.StartupCheck.Result;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** The stops of a start-up: by the flow switch, and at the set temperature. */
class StartupStopsTest {
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
    // The switch has stopped it while a slow meter still runs down.
    assertSays(
        RunBuilder.run().circulating(12).heating(30).circulating(0.15).off(10),
        Item.FLOW_LOSS_STOP,
        Result.PASS,
        "compressor stopped with the water");
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
    // Some heaters rest the compressor for a moment to turn the valve; that times no delay.
    assertSays(
        RunBuilder.run()
            .air(2)
            .circulating(12)
            .heating(60)
            .defrost(5)
            .heating(2)
            .circulating(2)
            .heating(60),
        Item.RESTART_DELAY,
        Result.NOT_SEEN,
        "a stop and a restart that is not beside a defrost");
  }

  /** What stops it hot is not the flow switch: high-pressure switches open around 65 Cel. */
  @Test
  void aStopByThePressureSwitchSaysNothingOfTheFlowSwitch() {
    assertSays(
        RunBuilder.run()
            .circulating(12)
            .heating(30)
            .set(Channel.FLOW_HEATER, 0)
            .set(Channel.FLOW_SWITCH, 0)
            .change(Channel.PRESSURE_DISCHARGE, (atS, kPa) -> 4200)
            .heating(0.25)
            .free(Channel.PRESSURE_DISCHARGE)
            .off(10),
        Item.FLOW_LOSS_STOP,
        Result.NOT_SEEN,
        "compressor stopped \\d+ s after the water, with 4\\.2\\d* MPa on the high side: its pressure"
            + " switch may have stopped it; have the flow switch tested by itself");
    assertSays(
        RunBuilder.run()
            .circulating(12)
            .heating(30)
            .set(Channel.FLOW_HEATER, 0)
            .set(Channel.FLOW_SWITCH, 1)
            .heating(0.25)
            .off(6),
        Item.FLOW_LOSS_STOP,
        Result.FAIL,
        "compressor stopped \\d+ s after the water, but flow-switch stayed closed for 6 min( \\d+"
            + " s)? without water");
  }

  @Test
  void setpointStop() {
    assertSays(
        wholeStartUp(),
        Item.SETPOINT_STOP,
        Result.PASS,
        "stopped with the water at 27\\.9 °C, 0\\.1 K below the set 28\\.0 °C");
    assertSays(
        RunBuilder.run().circulating(12).heating(30),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        "a stop with the water at the set 28\\.0 °C");
  }

  @Test
  void aStopForAnotherReasonIsNoStopAtTheSetTemperature() {
    assertSays(
        RunBuilder.run().pool(27.2).circulating(12).heating(30).circulating(15),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        "a stop with the water at the set 28\\.0 °C; the last stopped with the water at 27\\.2 °C,"
            + " 0\\.8 K below the set 28\\.0 °C");
    assertSays(
        RunBuilder.run()
            .pool(27.9)
            .circulating(12)
            .heating(30)
            .heatingAt(Channel.PRESSURE_DISCHARGE, 4100)
            .heating(10)
            .circulating(15),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        ".* 0\\.1 K below the set 28\\.0 °C, but with the high side near its limit");
    assertSays(
        RunBuilder.run().pool(27.9).circulating(12).heating(30).circulating(5).heating(10),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        ".*, but started again 5 min later");
    assertSays(
        RunBuilder.run().pool(27.9).circulating(12).heating(30).off(15),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        ".*, but the water stopped too");
    assertSays(
        RunBuilder.run()
            .pool(27.9)
            .circulating(12)
            .heating(30)
            .set(Channel.FLOW_SWITCH, 0)
            .circulating(0.5)
            .free(Channel.FLOW_SWITCH)
            .circulating(15),
        Item.SETPOINT_STOP,
        Result.NOT_SEEN,
        ".*, but the flow switch opened");
  }
}
