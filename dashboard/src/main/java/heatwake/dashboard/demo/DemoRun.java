package heatwake.dashboard.demo;

import heatwake.collector.broker.BrokerConfig;
import heatwake.collector.broker.BrokerLimits;
import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import heatwake.dashboard.demo.plant.night.Night;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * One simulated night, recorded like a real one: the site's boxes publish to the embedded broker,
 * the rig's MQTT source reads there, the recorder writes the database. Only the clock on the wall
 * is the site's own.
 *
 * @param run number of the run in the database
 * @param messages MQTT messages the boxes sent
 * @param sent readings in them
 * @param stored readings in the database
 */
public record DemoRun(long run, long messages, long sent, long stored) {
  private static final long PATIENCE_MS = 10_000;

  /** Intervals of all probes that may be on their way to the disk. */
  private static final int ROUNDS_AHEAD = 3;

  /**
   * Records a scenario.
   *
   * @param folder its database gets the run, and the rig file is left in it
   * @param startMs when the night begins
   * @param progress told how far it is, 0 to 1
   */
  public static DemoRun record(
      Scenario scenario, DemoFolder folder, long startMs, DoubleConsumer progress)
      throws InterruptedException {
    Path rigPath = folder.rig();
    Night night = scenario.from(startMs);
    DemoClock clock = new DemoClock(startMs);
    try (EmbeddedBroker broker =
            EmbeddedBroker.start(BrokerConfig.loopback(0).with(BrokerLimits.SIMULATION));
        Recorder recorder = Recorder.open(folder.database(), RecorderSettings.USUAL.with(clock))) {
      String text = RigText.of(scenario, DemoSite.nameplate(), broker.url());
      write(rigPath, text);
      RigFile rig = RigReader.parse(text, rigPath.toString());
      RecordedRun run = recorder.begin(rig);
      broker.reportTo(run);
      List<ProbeSource> sources = ProbeSources.of(rig);
      for (ProbeSource source : sources) {
        source.start(run);
      }
      int ahead = ROUNDS_AHEAD * scenario.probes().size();
      try (ProbePublisher boxes = new ProbePublisher(broker.url(), clock, run::stored, ahead)) {
        double lengthMs = night.endMs() - startMs;
        night.play(
            (tap, timeMs, value) -> {
              boxes.read(tap, timeMs, value);
              progress.accept((timeMs - startMs) / lengthMs);
            });
        boxes.flush();
        awaitDisk(boxes, run);
        sources.forEach(ProbeSource::close);
        run.end();
        return new DemoRun(run.id(), boxes.messages(), boxes.readings(), run.stored());
      } catch (MqttException fault) {
        throw new IllegalStateException("the simulated boxes cannot reach the broker", fault);
      }
    }
  }

  /** Readings that were sent and are not in the database. */
  public long lost() {
    return sent - stored;
  }

  private static void awaitDisk(ProbePublisher boxes, RecordedRun run) throws InterruptedException {
    long last = -1;
    long sinceMs = System.currentTimeMillis();
    while (run.stored() < boxes.readings() && System.currentTimeMillis() - sinceMs < PATIENCE_MS) {
      if (run.stored() != last) {
        last = run.stored();
        sinceMs = System.currentTimeMillis();
      }
      Thread.sleep(10);
    }
  }

  private static void write(Path path, String text) {
    try {
      Files.writeString(path, text);
    } catch (IOException fault) {
      throw new UncheckedIOException("cannot write " + path, fault);
    }
  }
}
