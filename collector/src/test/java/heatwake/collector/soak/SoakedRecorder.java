package heatwake.collector.soak;

import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.Cut;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;

/**
 * A recorder in a process of its own, to be killed. Arguments: rig, database, readings in a run.
 */
final class SoakedRecorder {
  private SoakedRecorder() {}

  public static void main(String[] arguments) throws Exception {
    RigFile rig = RigReader.read(Path.of(arguments[0]));
    List<ProbeSource> sources = ProbeSources.of(rig);
    Cut cut = new Cut.Readings(Long.parseLong(arguments[2]));
    Recorder recorder = Recorder.open(Path.of(arguments[1]), RecorderSettings.USUAL.with(cut));
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  sources.forEach(ProbeSource::close);
                  recorder.close();
                  stopped.countDown();
                }));
    RecordedRun run = recorder.begin(rig);
    for (ProbeSource source : sources) {
      source.start(run);
    }
    System.out.println("recording");
    stopped.await();
  }
}
