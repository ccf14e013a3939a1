package heatwake.collector.soak;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.MachineClock;
import heatwake.collector.peer.Mosquitto;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;

/** All that a recorder has around it, and what was sent to it. */
final class SoakedSite implements AutoCloseable {
  private final Random random;
  private final Tally serial = new Tally(Channel.WATER_IN);
  private final Tally mqtt3 = new Tally(Channel.WATER_OUT);
  private final Tally mqtt5 = new Tally(Channel.WATER_POOL);
  private final Tally inside = new Tally(Channel.WATER_RETURN);
  private final Strays strays = new Strays();
  private final SoakedDisk disk;
  private final Optional<MachineClock> clock;
  private final SoakedLine line;
  private final Mosquitto broker;
  private final SoakedNetwork network;
  private final int insidePort;
  private final RecorderUnderSoak recorder;
  private final Path database;
  private final Notes notes;

  /**
   * Sets everything up and starts the recorder.
   *
   * @param readingsInARun after how many readings a run is cut
   */
  SoakedSite(Path folder, Random random, long readingsInARun) throws Exception {
    this.random = random;
    disk = SoakedDisk.mount(folder.resolve("disk"));
    line = SoakedLine.plugged(folder);
    broker = Mosquitto.open(folder);
    network = SoakedNetwork.joined(folder, broker.port());
    insidePort = Mosquitto.freePort();
    database = disk.folder().resolve("heatwake.db");
    notes = new Notes(database);
    Path rig = Files.writeString(folder.resolve("soak.toml"), rig());
    clock = MachineClock.in(folder);
    recorder =
        clock
            .map(set -> new RecorderUnderSoak(folder, rig, database, readingsInARun, set))
            .orElseGet(() -> new RecorderUnderSoak(folder, rig, database, readingsInARun));
    recorder.start();
  }

  private String rig() {
    StringBuilder text = new StringBuilder("[site]\nname = \"Soak\"\n");
    text.append("[[source]]\nname = \"clips\"\nlines = \"json\"\nserial = \"")
        .append(line.port())
        .append("\"\n");
    for (int version : new int[] {3, 5}) {
      text.append("[[source]]\nname = \"wifi").append(version).append("\"\nversion = ");
      text.append(version).append("\nmqtt = \"mqtt://127.0.0.1:").append(network.port());
      text.append("\"\n");
    }
    text.append("[[source]]\nname = \"").append(SoakedRecorder.INSIDE);
    text.append("\"\nmqtt = \"mqtt://127.0.0.1:").append(insidePort).append("\"\n");
    probe(text, serial.channel(), "clips", "");
    probe(text, mqtt3.channel(), "wifi3", "topic = \"heron/out\"\n");
    probe(text, mqtt5.channel(), "wifi5", "topic = \"heron/pool\"\n");
    probe(text, inside.channel(), SoakedRecorder.INSIDE, "topic = \"heron/return\"\n");
    probe(text, Strays.CHANNEL, "wifi3", "topic = \"heron/air\"\n");
    return text.toString();
  }

  private static void probe(StringBuilder text, Channel channel, String source, String topic) {
    text.append("[[probe]]\nchannel = \"").append(channel).append("\"\nsource = \"");
    text.append(source).append("\"\n").append(topic);
    text.append("field = \"/v\"\ntime = \"/at\"\nunit = \"Cel\"\n");
  }

  /** Waits for a random time. */
  void pause(int atMostMs) throws InterruptedException {
    Thread.sleep(random.nextInt(atMostMs));
  }

  Random random() {
    return random;
  }

  /** What was sent over the serial line. */
  Tally serial() {
    return serial;
  }

  /** What was sent to the source that speaks MQTT 3.1.1. */
  Tally mqtt3() {
    return mqtt3;
  }

  /** What was sent to the source that speaks MQTT 5. */
  Tally mqtt5() {
    return mqtt5;
  }

  /** What was sent to the broker inside the recorder. */
  Tally inside() {
    return inside;
  }

  /** The port of that broker. */
  int insidePort() {
    return insidePort;
  }

  /** What a probe with a wrong clock sent. */
  Strays strays() {
    return strays;
  }

  Notes notes() {
    return notes;
  }

  SoakedDisk disk() {
    return disk;
  }

  /** The recorder's clock, if it can be set here. */
  Optional<MachineClock> clock() {
    return clock;
  }

  SoakedLine line() {
    return line;
  }

  Mosquitto broker() {
    return broker;
  }

  SoakedNetwork network() {
    return network;
  }

  RecorderUnderSoak recorder() {
    return recorder;
  }

  Path database() {
    return database;
  }

  @Override
  public void close() throws IOException {
    recorder.close();
    network.close();
    broker.close();
    line.close();
    disk.close();
  }
}
