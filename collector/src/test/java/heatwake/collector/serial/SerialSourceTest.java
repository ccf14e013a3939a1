package heatwake.collector.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.peer.Probes;
import heatwake.collector.peer.PtyPair;
import heatwake.collector.peer.RememberingIntake;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.rig.SourceSpec.LineFormat;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Over pseudo-terminals joined by socat. */
class SerialSourceTest {
  @TempDir private Path folder;

  private final RememberingIntake intake = new RememberingIntake();

  private static SerialSource source(String port, LineFormat lines, ProbeSpec... probes) {
    return new SerialSource(
        new SourceSpec.Serial("clips", port, 9600, lines),
        List.of(probes),
        PortFinder.ofThisMachine());
  }

  private static SerialSource pair(String port) {
    return source(
        port,
        LineFormat.KEY_VALUE,
        Probes.field(Channel.WATER_IN, "t1"),
        Probes.field(Channel.WATER_OUT, "t2"));
  }

  private void awaitCount(int count) throws Exception {
    Eventually.that(count + " readings", () -> intake.readings().size() >= count);
  }

  @Test
  void everyLineArrivesWithItsValues() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        SerialSource source = pair(cable.port())) {
      source.start(intake);
      for (int i = 0; i < 500; i++) {
        cable.send("t1=" + (20 + i / 64.0) + " t2=" + (25 + i / 64.0) + "\r\n");
      }
      awaitCount(1000);
      assertThat(intake.values(Channel.WATER_IN))
          .containsExactlyElementsOf(IntStream.range(0, 500).mapToObj(i -> 20 + i / 64.0).toList());
      assertThat(intake.values(Channel.WATER_OUT))
          .containsExactlyElementsOf(IntStream.range(0, 500).mapToObj(i -> 25 + i / 64.0).toList());
      assertThat(intake.happened()).isEmpty();
      assertThat(intake.begun()).isEmpty();
    }
  }

  @Test
  void csvAndJsonWithTheProbesOwnTime() throws Exception {
    ProbeSpec stamped =
        Probes.at(Channel.WATER_IN, new ProbeSpec.Address.Field("/t"), Optional.of("/at"));
    try (PtyPair csv = PtyPair.plugged(folder, "csv");
        PtyPair json = PtyPair.plugged(folder, "json");
        SerialSource first =
            source(csv.port(), LineFormat.CSV, Probes.field(Channel.AIR_IN, "air"));
        SerialSource second = source(json.port(), LineFormat.JSON, stamped)) {
      first.start(intake);
      second.start(intake);
      csv.send("water,air\n27.5,19.25\n");
      json.send("{\"t\":27.5,\"at\":1935684000000}\n");
      awaitCount(2);
      assertThat(intake.values(Channel.AIR_IN)).containsExactly(19.25);
      assertThat(
              intake.readings().stream().filter(one -> one.channel() == Channel.WATER_IN).toList())
          .singleElement()
          .matches(one -> one.timeMs() == 1935684000000L && one.stampedByProbe());
    }
  }

  @Test
  void noiseHalfLinesAndOverlongLinesCostNoGoodReading() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        SerialSource source = pair(cable.port())) {
      source.start(intake);
      Random random = new Random(7);
      for (int i = 0; i < 100; i++) {
        byte[] noise = new byte[random.nextInt(200)];
        random.nextBytes(noise);
        cable.send(noise);
        cable.send("\nt1=2\nt2\nx=9 " + "z".repeat(i % 10 == 0 ? 9000 : 5));
        cable.send("\nt1=" + (20 + i) + " t2=nan\n");
        cable.send("t1=abc t2=" + (25 + i) + "\n");
      }
      Eventually.that("the last reading", () -> intake.values(Channel.WATER_OUT).contains(124.0));
      // "t1=2" is cut but whole in form: nobody could tell. All else that is good is there, once.
      assertThat(intake.values(Channel.WATER_IN).stream().filter(value -> value != 2))
          .containsExactlyElementsOf(IntStream.range(20, 120).mapToObj(i -> (double) i).toList());
      assertThat(intake.values(Channel.WATER_OUT))
          .containsExactlyElementsOf(IntStream.range(25, 125).mapToObj(i -> (double) i).toList());
      assertThat(intake.happened())
          .anyMatch(event -> event.startsWith("UNREADABLE clips: line"))
          .anyMatch(event -> event.equals("UNREADABLE water-in: \"abc\" is not a number"))
          .anyMatch(event -> event.equals("SENSOR_FAULT water-out: the probe sent \"nan\""))
          .allMatch(event -> event.length() < 200);
    }
  }

  @Test
  void firstLineCutAtItsBeginningIsPassedOverQuietly() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        SerialSource source = pair(cable.port())) {
      // In the buffer before we open: the middle of a line.
      cable.send("3.4 t2=25.1\nt1=23.5 t2=25.2\n");
      source.start(intake);
      awaitCount(2);
      assertThat(intake.values(Channel.WATER_OUT)).containsExactly(25.2);
      assertThat(intake.happened()).isEmpty();
    }
  }

  @Test
  void pulledAndPluggedAgainItGoesOn() throws Exception {
    try (PtyPair cable = PtyPair.plugged(folder, "clips");
        SerialSource source = pair(cable.port())) {
      source.start(intake);
      cable.send("t1=20 t2=25\n");
      awaitCount(2);
      for (int again = 1; again <= 3; again++) {
        cable.unplug();
        Eventually.that("noticed", () -> intake.lasting().contains("SOURCE_LOST clips"));
        cable.plug();
        Eventually.that("back", () -> intake.lasting().isEmpty());
        cable.send("t1=" + (20 + again) + " t2=25\n");
        awaitCount(2 + 2 * again);
      }
      assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.0, 21.0, 22.0, 23.0);
      assertThat(intake.begun()).hasSize(3).allMatch(event -> event.contains(cable.port()));
    }
  }

  /** The lines are real; who sits at which of them is told by the test, as there is no USB. */
  @Test
  void adapterThatComesBackUnderAnotherNameIsFollowed() throws Exception {
    UsbIdentity clips = UsbIdentity.parse("usb:0403:6001:A5").orElseThrow();
    UsbIdentity other = UsbIdentity.parse("usb:0403:6001:B7").orElseThrow();
    List<PortInfo> present = new CopyOnWriteArrayList<>();
    try (PtyPair before = PtyPair.plugged(folder, "ttyUSB0");
        SerialSource source =
            new SerialSource(
                new SourceSpec.Serial("clips", clips.toString(), 9600, LineFormat.KEY_VALUE),
                List.of(Probes.field(Channel.WATER_IN, "t1")),
                new PortFinder(() -> present))) {
      present.add(new PortInfo(before.port(), "adapter", Optional.of(clips)));
      source.start(intake);
      before.send("t1=20\n");
      awaitCount(1);

      before.unplug();
      present.clear();
      Eventually.that("noticed", () -> intake.lasting().contains("SOURCE_LOST clips"));
      before.plug();
      try (PtyPair after = PtyPair.plugged(folder, "ttyUSB1")) {
        // Another adapter has taken the old name meanwhile.
        present.add(new PortInfo(before.port(), "adapter", Optional.of(other)));
        present.add(new PortInfo(after.port(), "adapter", Optional.of(clips)));
        Eventually.that("back", () -> intake.lasting().isEmpty());
        before.send("t1=99\n");
        after.send("t1=21\n");
        awaitCount(2);
        assertThat(intake.values(Channel.WATER_IN)).containsExactly(20.0, 21.0);
        assertThat(intake.begun()).hasSize(1);
      }
    }
  }

  /** The library goes by the last name where a path is not there, and would open /dev/null. */
  @Test
  void aPathThatIsGoneIsNotTakenForTheDeviceOfItsLastName() {
    String port = folder.resolve("null").toString();
    assertThatThrownBy(() -> OpenPort.open(port, LineSettings.of(9600)))
        .isInstanceOf(PortException.class)
        .hasMessage(port + ": no such port; is the adapter plugged in?");
  }

  @Test
  void portThatIsNotThereYetIsSaidAndAwaited() throws Exception {
    String port = folder.resolve("later").toString();
    try (SerialSource source = pair(port)) {
      source.start(intake);
      assertThat(intake.begun())
          .containsExactly(
              "SOURCE_LOST clips: " + port + ": no such port; is the adapter plugged in?");
      try (PtyPair cable = PtyPair.plugged(folder, "later")) {
        Eventually.that("open", () -> intake.lasting().isEmpty());
        cable.send("t1=20 t2=25\n");
        awaitCount(2);
      }
    }
  }
}
