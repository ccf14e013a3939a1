package heatwake.collector.soak;

import heatwake.collector.broker.BrokerConfig;
import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.Cut;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.source.ProbeSources;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * A recorder in a process of its own, to be killed. Arguments: rig, database, readings in a run. If
 * a source is called {@value #INSIDE}, its broker is inside this process.
 */
final class SoakedRecorder {
  static final String INSIDE = "inside";

  private static final Duration BROKER_PATIENCE = Duration.ofSeconds(20);

  private SoakedRecorder() {}

  public static void main(String[] arguments) throws Exception {
    RigFile rig = RigReader.read(Path.of(arguments[0]));
    List<ProbeSource> sources = ProbeSources.of(rig);
    Cut cut = new Cut.Readings(Long.parseLong(arguments[2]));
    Optional<EmbeddedBroker> broker = broker(rig);
    Recorder recorder = Recorder.open(Path.of(arguments[1]), RecorderSettings.USUAL.with(cut));
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  broker.ifPresent(one -> one.takeNoMore(BROKER_PATIENCE));
                  sources.forEach(ProbeSource::close);
                  recorder.close();
                  broker.ifPresent(EmbeddedBroker::close);
                  stopped.countDown();
                }));
    RecordedRun run = recorder.begin(rig);
    for (ProbeSource source : sources) {
      source.start(broker.map(one -> one.knowingSenders(run)).orElse(run));
    }
    broker.ifPresent(EmbeddedBroker::letAllIn);
    System.out.println("recording");
    stopped.await();
  }

  private static Optional<EmbeddedBroker> broker(RigFile rig) {
    return rig.sources().stream()
        .filter(source -> source.name().equals(INSIDE))
        .map(source -> URI.create(((SourceSpec.Mqtt) source).url()).getPort())
        .map(
            port ->
                EmbeddedBroker.startFor(
                    ProbeSources.sessions(List.of(rig)), BrokerConfig.loopback(port)))
        .findFirst();
  }
}
