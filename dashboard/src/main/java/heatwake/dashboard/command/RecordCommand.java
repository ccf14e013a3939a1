package heatwake.dashboard.command;

import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Records the probes of one or more sites until stopped. */
@Command(name = "record", description = "Records a site's probes until stopped.")
final class RecordCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private StoreOption database;

  @Parameters(
      paramLabel = "RIG.toml",
      arity = "1..*",
      description = "What is clipped where; several rigs are recorded as several runs.")
  private List<Path> rigs;

  @Override
  public Integer call() throws InterruptedException, ExecutionException {
    Map<RigFile, List<ProbeSource>> sites = new LinkedHashMap<>();
    for (Path file : rigs) {
      RigFile rig = RigReader.read(file);
      RigReader.requireRecordable(rig);
      sites.put(rig, ProbeSources.of(rig));
    }
    Recorder recorder = Recorder.open(database.file(), RecorderSettings.USUAL);
    List<ProbeSource> started = new ArrayList<>();
    StopSignal stop = StopSignal.watch();
    try {
      PrintWriter out = spec.commandLine().getOut();
      for (Map.Entry<RigFile, List<ProbeSource>> site : sites.entrySet()) {
        RecordedRun run = recorder.begin(site.getKey());
        for (ProbeSource source : site.getValue()) {
          started.add(source);
          source.start(run);
        }
        out.println("recording run " + run.id());
        out.flush();
      }
      stop.awaitOr(recorder.ended());
      return Main.DONE;
    } finally {
      started.forEach(ProbeSource::close);
      recorder.close();
      stop.handled();
    }
  }
}
