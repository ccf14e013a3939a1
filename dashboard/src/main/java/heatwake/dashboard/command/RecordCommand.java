package heatwake.dashboard.command;

import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import heatwake.collector.unattended.Attendant;
import heatwake.collector.unattended.DiskForecast;
import heatwake.collector.unattended.ServiceManager;
import heatwake.collector.unattended.StatusOutlet;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Records the probes of one or more sites until stopped. */
@Command(name = "record", description = "Records a site's probes until stopped.")
final class RecordCommand implements Callable<Integer> {
  private static final Logger LOG = LoggerFactory.getLogger(RecordCommand.class);

  /** How long a stop waits for what the broker took; longer only if the database is locked. */
  private static final Duration BROKER_PATIENCE = Duration.ofSeconds(20);

  @Spec private CommandSpec spec;
  @Mixin private StoreOption database;
  @Mixin private UnattendedOption unattended;
  @Mixin private BrokerOption broker;

  @Option(
      names = "--print-unit",
      description = "Records nothing; prints a systemd unit that records like this.")
  private boolean printUnit;

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
      // The printed unit reads passwords from a file of its own when it starts.
      sites.put(rig, ProbeSources.of(rig, printUnit ? variable -> "" : System::getenv));
    }
    if (printUnit) {
      printUnit(sites.keySet());
      return Main.DONE;
    }
    ProbeSources.requirePortsApart(sites.keySet());
    Set<String> sessions = ProbeSources.sessions(sites.keySet());
    List<StatusOutlet> outlets =
        unattended.outlets(List.copyOf(sites.keySet()), database.file(), filesRead());
    Optional<EmbeddedBroker> embedded = broker.start(sessions);
    try {
      return record(sites, outlets, embedded);
    } finally {
      embedded.ifPresent(EmbeddedBroker::close);
    }
  }

  private int record(
      Map<RigFile, List<ProbeSource>> sites,
      List<StatusOutlet> outlets,
      Optional<EmbeddedBroker> embedded)
      throws InterruptedException, ExecutionException {
    Recorder recorder =
        Recorder.open(database.file(), RecorderSettings.USUAL.with(unattended.cut()));
    LOG.info("{}", DiskForecast.of(sites.keySet(), database.file()).text());
    List<ProbeSource> started = new ArrayList<>();
    StopSignal stop = StopSignal.watch();
    Optional<ServiceManager> manager = ServiceManager.asked();
    try {
      PrintWriter out = spec.commandLine().getOut();
      List<RigFile> served = embedded.map(one -> one.served(sites.keySet())).orElseGet(List::of);
      for (Map.Entry<RigFile, List<ProbeSource>> site : sites.entrySet()) {
        RecordedRun run = recorder.begin(site.getKey());
        if (served.contains(site.getKey())) {
          embedded.ifPresent(one -> one.reportTo(run));
        }
        for (ProbeSource source : site.getValue()) {
          started.add(source);
          source.start(embedded.map(one -> one.knowingSenders(run)).orElse(run));
        }
        out.println("recording run " + run.id());
        out.flush();
      }
      // Now there is somebody to hear what probes say, and to count whom the broker refuses.
      embedded.ifPresent(EmbeddedBroker::letAllIn);
      try (Attendant attendant = unattended.attendant(recorder, embedded, outlets)) {
        attendant.start();
        manager.ifPresent(ServiceManager::ready);
        stop.awaitOr(recorder.ended());
      }
      return Main.DONE;
    } finally {
      manager.ifPresent(ServiceManager::stopping);
      if (embedded.isPresent() && !recorder.ended().isDone()) {
        // What it acknowledges after our sources have gone would be lost with it.
        embedded.get().takeNoMore(BROKER_PATIENCE);
      }
      started.forEach(ProbeSource::close);
      recorder.close();
      stop.handled();
    }
  }

  private List<Path> filesRead() {
    List<Path> read = new ArrayList<>(rigs);
    broker.usersFile().ifPresent(read::add);
    return read;
  }

  private void printUnit(Collection<RigFile> sites) {
    String names =
        sites.stream().map(rig -> rig.rig().site().name()).collect(Collectors.joining(", "));
    List<String> words = new ArrayList<>();
    for (String word : spec.root().commandLine().getParseResult().originalArgs()) {
      if (!word.equals("--print-unit")) {
        words.add(withAbsolutePath(word));
      }
    }
    if (words.stream().noneMatch(word -> word.startsWith("--db"))) {
      words.addAll(List.of("--db", database.file().toAbsolutePath().toString()));
    }
    spec.commandLine().getOut().print(SystemdUnit.text(names, words));
    spec.commandLine().getOut().flush();
  }

  /** A service starts in another folder: what is a path here must be one there. */
  private String withAbsolutePath(String word) {
    int equals = word.startsWith("--") ? word.indexOf('=') + 1 : 0;
    String value = word.substring(equals);
    boolean path =
        !value.isEmpty()
            && !value.startsWith("--")
            && (Files.exists(Path.of(value))
                || Path.of(value).equals(database.file())
                || unattended.isStatusFile(Path.of(value)));
    return path ? word.substring(0, equals) + Path.of(value).toAbsolutePath().normalize() : word;
  }
}
