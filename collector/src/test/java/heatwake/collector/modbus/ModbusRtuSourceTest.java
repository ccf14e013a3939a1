package heatwake.collector.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.peer.RealProgram;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.ProbeSpec.Address.Register;
import heatwake.collector.rig.ProbeSpec.RegisterType;
import heatwake.collector.rig.ProbeSpec.Table;
import heatwake.collector.rig.ProbeSpec.WordOrder;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.serial.PortFinder;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against units made by pymodbus at the other end of a pseudo-terminal, and frame by frame. */
class ModbusRtuSourceTest {
  private static final String PYTHON = "/usr/bin/python3";

  @TempDir private Path folder;

  private final RememberingIntake intake = new RememberingIntake();

  private static ModbusRtuSource source(String port, ProbeSpec... probes) {
    return new ModbusRtuSource(
        new SourceSpec.ModbusRtu("meter", port, 19200, SourceSpec.Parity.NONE, 1),
        List.of(probes),
        PortFinder.ofThisMachine());
  }

  private static ProbeSpec input(
      Channel channel, int unit, int number, RegisterType type, WordOrder order) {
    return every(channel, new Register(unit, Table.INPUT, number, type, order), 0.05);
  }

  private static ProbeSpec every(Channel channel, Register register, double seconds) {
    ProbeSpec probe = Probes.at(channel, register, Optional.empty());
    return new ProbeSpec(
        channel,
        probe.source(),
        register,
        probe.unit(),
        probe.scale(),
        Optional.empty(),
        OptionalDouble.of(seconds));
  }

  private RealProgram units(PtyPair cable) throws Exception {
    if (!Files.isExecutable(Path.of(PYTHON))) {
      RealProgram.absent(PYTHON + " is not installed");
    }
    try {
      RealProgram.run(folder, PYTHON, "-c", "import pymodbus.server");
    } catch (AssertionError missing) {
      RealProgram.absent("python3-pymodbus (with python3-serial-asyncio) is not installed");
    }
    Path script = folder.resolve("modbus_units.py");
    try (InputStream in = getClass().getResourceAsStream("/modbus_units.py")) {
      Files.copy(in, script, StandardCopyOption.REPLACE_EXISTING);
    }
    RealProgram units =
        RealProgram.start(folder, PYTHON, script.toString(), cable.far().toString());
    // What is asked before they are up is a unit that does not answer, which is told.
    Eventually.that("units are up", () -> units.output().contains("answering"));
    return units;
  }

  @Test
  void readsAllTypesInBothWordOrdersFromBothTables() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        RealProgram units = units(cable);
        ModbusRtuSource source =
            source(
                cable.port(),
                input(Channel.WATER_IN, 1, 0, RegisterType.FLOAT32, WordOrder.BIG),
                input(Channel.WATER_OUT, 1, 2, RegisterType.FLOAT32, WordOrder.LITTLE),
                input(Channel.WATER_POOL, 1, 4, RegisterType.INT16, WordOrder.BIG),
                input(Channel.VOLTAGE, 1, 5, RegisterType.UINT16, WordOrder.BIG),
                input(Channel.POWER, 1, 6, RegisterType.INT32, WordOrder.BIG),
                input(Channel.ENERGY, 1, 8, RegisterType.UINT32, WordOrder.BIG),
                every(
                    Channel.CURRENT,
                    new Register(1, Table.HOLDING, 5, RegisterType.UINT16, WordOrder.BIG),
                    0.05))) {
      source.start(intake);
      Eventually.that("readings", () -> intake.values(Channel.CURRENT).size() > 3);
      assertThat(units.isRunning()).isTrue();
      assertThat(intake.values(Channel.WATER_IN)).isNotEmpty().containsOnly(25.0625);
      assertThat(intake.values(Channel.WATER_OUT)).containsOnly(25.0625);
      assertThat(intake.values(Channel.WATER_POOL)).containsOnly(-2.0);
      assertThat(intake.values(Channel.VOLTAGE)).containsOnly(65534.0);
      assertThat(intake.values(Channel.POWER)).containsOnly(-70000.0);
      assertThat(intake.values(Channel.ENERGY)).containsOnly(4_000_000_000.0);
      assertThat(intake.values(Channel.CURRENT)).containsOnly(321.0);
    }
  }

  @Test
  void severalUnitsOnOneBusEachWithItsScale() throws Exception {
    ProbeSpec hundredths =
        scaled(input(Channel.VOLTAGE, 2, 10, RegisterType.UINT16, WordOrder.BIG), 0.1);
    ProbeSpec tens = scaled(input(Channel.POWER, 1, 6, RegisterType.INT32, WordOrder.BIG), -0.01);
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        RealProgram units = units(cable);
        ModbusRtuSource source = source(cable.port(), hundredths, tens)) {
      source.start(intake);
      Eventually.that(
          "both",
          () ->
              intake.values(Channel.VOLTAGE).size() > 5 && intake.values(Channel.POWER).size() > 5);
      assertThat(units.isRunning()).isTrue();
      assertThat(intake.values(Channel.VOLTAGE)).containsOnly(100.0);
      assertThat(intake.values(Channel.POWER)).containsOnly(700.0);
      assertThat(intake.begun()).isEmpty();
    }
  }

  private static ProbeSpec scaled(ProbeSpec probe, double scale) {
    return new ProbeSpec(
        probe.channel(),
        probe.source(),
        probe.address(),
        probe.unit(),
        scale,
        probe.time(),
        probe.intervalS());
  }

  @Test
  void absentUnitIsSaidAndDoesNotStarveTheOthers() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        RealProgram units = units(cable);
        ModbusRtuSource source =
            source(
                cable.port(),
                input(Channel.WATER_IN, 1, 0, RegisterType.FLOAT32, WordOrder.BIG),
                input(Channel.POWER, 9, 0, RegisterType.FLOAT32, WordOrder.BIG))) {
      source.start(intake);
      Eventually.that("many readings", () -> intake.values(Channel.WATER_IN).size() >= 60);
      assertThat(units.isRunning()).isTrue();
      assertThat(intake.lasting()).containsExactly("SOURCE_LOST meter unit 9");
      assertThat(intake.begun())
          .contains("SOURCE_LOST meter unit 9: no answer; check wiring, unit id and baud");
    }
  }

  @Test
  void registersThatDoNotExistInBetweenAreNotAskedForAgain() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        RealProgram units = units(cable);
        ModbusRtuSource source =
            source(
                cable.port(),
                input(Channel.VOLTAGE, 2, 10, RegisterType.UINT16, WordOrder.BIG),
                input(Channel.POWER, 2, 14, RegisterType.UINT16, WordOrder.BIG),
                input(Channel.CURRENT, 2, 40, RegisterType.UINT16, WordOrder.BIG))) {
      source.start(intake);
      Eventually.that("readings", () -> intake.values(Channel.POWER).size() > 3);
      assertThat(units.isRunning()).isTrue();
      assertThat(intake.values(Channel.VOLTAGE)).containsOnly(1000.0);
      assertThat(intake.values(Channel.POWER)).containsOnly(1400.0);
      assertThat(intake.happened())
          .containsExactly(
              "UNREADABLE current: meter unit 2 refuses register 40: it has no such register"
                  + " (counted from zero)");
      // As a loss it is in log and status too, and in what the analysis says is missing.
      assertThat(intake.begun())
          .containsExactly(
              "SOURCE_LOST meter unit 2 register 40: refused: it has no such register (counted from"
                  + " zero)");
      assertThat(intake.lasting()).containsExactly("SOURCE_LOST meter unit 2 register 40");
    }
  }

  @Test
  void busPulledAndPluggedAgainGoesOn() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus")) {
      RealProgram first = units(cable);
      try (ModbusRtuSource source =
          source(
              cable.port(), input(Channel.WATER_IN, 1, 0, RegisterType.FLOAT32, WordOrder.BIG))) {
        source.start(intake);
        Eventually.that("a reading", () -> !intake.readings().isEmpty());
        cable.unplug();
        first.close();
        Eventually.that("noticed", () -> intake.lasting().contains("SOURCE_LOST meter"));
        cable.plug();
        try (RealProgram second = units(cable)) {
          Eventually.that("back", () -> intake.lasting().isEmpty());
          int before = intake.readings().size();
          Eventually.that("goes on", () -> intake.readings().size() > before);
          assertThat(second.isRunning()).isTrue();
        }
      }
    }
  }

  // Frames with their checksums: facts on field buses, 8f. The second also shows that neighbours
  // are read in one request.
  @Test
  void requestsAreFramedAsTheStandardSays() throws Exception {
    assertThat(
            firstRequest(
                8,
                slow(
                    Channel.POWER,
                    new Register(1, Table.INPUT, 0, RegisterType.FLOAT32, WordOrder.BIG))))
        .isEqualTo("01040000000271cb");
    assertThat(
            firstRequest(
                8,
                slow(
                    Channel.POWER,
                    new Register(17, Table.HOLDING, 108, RegisterType.FLOAT32, WordOrder.BIG)),
                slow(
                    Channel.CURRENT,
                    new Register(17, Table.HOLDING, 107, RegisterType.UINT16, WordOrder.BIG))))
        .isEqualTo("1103006b00037687");
  }

  private static ProbeSpec slow(Channel channel, Register register) {
    return every(channel, register, 3600);
  }

  private String firstRequest(int length, ProbeSpec... probes) throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        InputStream wire = Files.newInputStream(cable.far());
        ModbusRtuSource source = source(cable.port(), probes)) {
      source.start(intake);
      return HexFormat.of().formatHex(wire.readNBytes(length));
    }
  }

  @Test
  void answerOfAnotherUnitOrWithWrongChecksumIsNoReading() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        InputStream wire = Files.newInputStream(cable.far());
        ModbusRtuSource source =
            source(cable.port(), input(Channel.POWER, 1, 0, RegisterType.UINT16, WordOrder.BIG))) {
      source.start(intake);
      wire.readNBytes(8);
      // 02 04 02 00 7B: unit 2 answers; CRC BD 13 by the polynomial of the serial line guide.
      cable.send(HexFormat.of().parseHex("020402007bbd13"));
      wire.readNBytes(8);
      cable.send(HexFormat.of().parseHex("010402007b0000"));
      Eventually.that("noise told", () -> !intake.begun().isEmpty());
      assertThat(intake.begun().get(0)).startsWith("SOURCE_LOST meter unit 1: its answers are");
      assertThat(intake.readings()).isEmpty();
    }
  }

  @Test
  void oneAnswerThatIsLostIsAskedForAgainAndIsNoEvent() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "bus");
        InputStream wire = Files.newInputStream(cable.far());
        ModbusRtuSource source =
            source(cable.port(), input(Channel.POWER, 1, 0, RegisterType.UINT16, WordOrder.BIG))) {
      source.start(intake);
      byte[] asked = wire.readNBytes(8);
      assertThat(wire.readNBytes(8)).isEqualTo(asked);
      // The checksum by the polynomial of the serial line guide.
      cable.send(HexFormat.of().parseHex("010402007bf913"));
      Eventually.that("the reading", () -> intake.values(Channel.POWER).equals(List.of(123.0)));
      assertThat(intake.begun()).isEmpty();
      assertThat(intake.happened()).isEmpty();
    }
  }
}
