package heatwake.analysis.startup;

import static heatwake.analysis.startup.StartUp.assertSays;
import static heatwake.analysis.startup.StartUp.wholeStartUp;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.StartupCheck.Item;
import heatwake.analysis.finding.StartupCheck.Result;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A start-up as a technician goes through it, and what the list says of it. */
class StartupListTest {
  @Test
  void probeZero() {
    assertSays(
        wholeStartUp(),
        Item.PROBE_ZERO,
        Result.PASS,
        "water-out less water-in −?0\\.0\\d ± 0\\.\\d\\d K at rest; up to 0\\.\\d\\d K is allowed");
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

  /** Rests that disagree by kelvins give a zero that says nothing. */
  @Test
  void aZeroThatSaysNothingIsNoPassedCheck() {
    assertSays(
        RunBuilder.run()
            .change(Channel.WATER_OUT, (atS, value) -> value + 0.4 * atS / 3600)
            .circulating(15)
            .heating(180)
            .circulating(15),
        Item.PROBE_ZERO,
        Result.NOT_SEEN,
        "water-out less water-in .* at rest, too uncertain to tell; let water circulate for 10 min"
            + " with the compressor at rest, and see whether the difference is the same at every"
            + " rest");
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
        RunBuilder.run()
            .set(Channel.PRESSURE_DISCHARGE, 600)
            .noise(Channel.PRESSURE_DISCHARGE, 1)
            .off(12)
            .circulating(5)
            .heating(10),
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
        "fan on at 15\\d W for 30 s, 12 min after water was there");
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
    assertSays(
        RunBuilder.run().nothingRecorded(5).heating(20),
        Item.COMPRESSOR_START,
        Result.NOT_SEEN,
        "the compressor ran when the readings (began|first told of it)");
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
        "1\\.51 to 1\\.56 MPa; a sound compressor raises it by 10 %, or parts the two sides");
  }

  /** In hot air over cold water the high side of a sound heater stands high before the start. */
  @Test
  void aHighSideThatWarmAirHasRaisedNeedNotClimb() {
    RunBuilder hot =
        RunBuilder.run()
            .heatingAt(Channel.PRESSURE_DISCHARGE, 1540)
            .heatingAt(Channel.PRESSURE_SUCTION, 700);
    assertSays(
        hot.off(12).circulating(5).heating(10),
        Item.PRESSURE_RISE,
        Result.PASS,
        "1\\.51 to 1\\.54 MPa; it compresses all the same: the low side stands at 0\\.70 MPa");
  }

  @Test
  void aFanThatOnlyFollowsTheCompressorHasNotStarted() {
    assertSays(
        RunBuilder.run().circulating(12).heating(30).fan(0.2).circulating(10),
        Item.FAN_START,
        Result.NOT_SEEN,
        "fan and compressor came on within 2 s, too close together to be told apart: 12 W before,"
            + " 2700 W after; the air enters with 24\\.0 °C and leaves with 18\\.0 °C");
    assertSays(
        RunBuilder.run()
            .set(Channel.AIR_OUT, 24)
            .noise(Channel.AIR_OUT, 0.01)
            .circulating(12)
            .heating(30)
            .circulating(10),
        Item.FAN_START,
        Result.NOT_SEEN,
        "fan and compressor came on .*: 12 W before, 2700 W after; the air enters with 24\\.0 °C and"
            + " leaves with 24\\.0 °C: look whether the fan turns");
    assertSays(
        RunBuilder.run().only(Channel.CURRENT).circulating(12).fan(0.5).heating(10),
        Item.FAN_START,
        Result.PASS,
        "fan on at 0\\.7\\d A for 30 s.*");
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("channelSets")
  void whatIsNotClippedIsNotMeasured(Set<Channel> clipped, Set<Item> measured) {
    RunBuilder run =
        RunBuilder.run().only(clipped.toArray(Channel[]::new)).off(12).circulating(12).heating(2);
    List<StartupCheck> list = Analysis.of(run.recording()).startup();

    assertThat(list)
        .filteredOn(check -> check.result() != Result.NOT_MEASURED)
        .extracting(StartupCheck::check)
        .containsExactlyInAnyOrderElementsOf(measured);
  }

  private static Stream<Arguments> channelSets() {
    return Stream.of(
        Arguments.of(EnumSet.of(Channel.AIR_AMBIENT, Channel.VOLTAGE), EnumSet.of(Item.VOLTAGE)),
        Arguments.of(
            EnumSet.of(Channel.POWER),
            EnumSet.of(Item.FAN_START, Item.COMPRESSOR_START, Item.RESTART_DELAY)),
        Arguments.of(
            EnumSet.of(Channel.CURRENT),
            EnumSet.of(Item.FAN_START, Item.COMPRESSOR_START, Item.CURRENT, Item.RESTART_DELAY)),
        Arguments.of(EnumSet.of(Channel.WATER_POOL), EnumSet.noneOf(Item.class)),
        Arguments.of(EnumSet.of(Channel.PUMP_ON), EnumSet.of(Item.FLOW_MADE)),
        Arguments.of(EnumSet.of(Channel.FLOW_HEATER), EnumSet.of(Item.FLOW_MADE, Item.HEATER_FLOW)),
        Arguments.of(EnumSet.of(Channel.FLOW_TOTAL), EnumSet.of(Item.FLOW_MADE)),
        Arguments.of(
            EnumSet.of(Channel.WATER_IN, Channel.WATER_OUT),
            EnumSet.of(
                Item.PROBE_ZERO, Item.TEMPERATURE_RISE, Item.COMPRESSOR_START, Item.SETPOINT_STOP)),
        Arguments.of(
            EnumSet.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.AIR_IN, Channel.FLOW_HEATER),
            EnumSet.of(
                Item.PROBE_ZERO,
                Item.FLOW_MADE,
                Item.COMPRESSOR_START,
                Item.TEMPERATURE_RISE,
                Item.HEATER_FLOW,
                Item.RATED_HEAT,
                Item.SETPOINT_STOP)),
        Arguments.of(
            EnumSet.of(
                Channel.WATER_IN, Channel.WATER_OUT, Channel.WATER_RETURN, Channel.FLOW_TOTAL),
            EnumSet.of(
                Item.PROBE_ZERO,
                Item.FLOW_MADE,
                Item.COMPRESSOR_START,
                Item.TEMPERATURE_RISE,
                Item.HEATER_FLOW,
                Item.SETPOINT_STOP)),
        Arguments.of(
            EnumSet.of(Channel.PRESSURE_DISCHARGE),
            EnumSet.of(Item.COMPRESSOR_START, Item.PRESSURE_RISE, Item.RESTART_DELAY)),
        Arguments.of(
            EnumSet.of(Channel.PRESSURE_DISCHARGE, Channel.AIR_AMBIENT, Channel.PUMP_ON),
            EnumSet.of(
                Item.STANDING_PRESSURE,
                Item.FLOW_MADE,
                Item.COMPRESSOR_START,
                Item.PRESSURE_RISE,
                Item.FLOW_LOSS_STOP,
                Item.RESTART_DELAY)));
  }
}
