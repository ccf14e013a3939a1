package heatwake.dashboard.command;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.collector.store.Store;
import heatwake.dashboard.demo.DemoFolder;
import heatwake.dashboard.demo.DemoRun;
import heatwake.dashboard.demo.Progress;
import heatwake.dashboard.demo.Scenario;
import heatwake.dashboard.demo.Scenarios;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.text.FindingsText;
import heatwake.dashboard.window.Dashboard;
import heatwake.dashboard.window.Display;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs the whole job on a simulated site. */
@Command(
    name = "demo",
    description = {
      "Runs the whole job on a simulated site: its probes publish a night to a broker in this"
          + " program, and the night is recorded, analysed and reported like a real one.",
      "Opens the window where there is a display."
    })
final class DemoCommand implements Callable<Integer> {
  private static final LocalTime EVENING = LocalTime.of(18, 0);

  @Spec private CommandSpec spec;

  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      converter = FilledIn.class,
      defaultValue = Scenarios.USUAL,
      description = "What happens at the site; default ${DEFAULT-VALUE}.")
  private String scenarioName;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "heatwake-demo",
      description = "Folder for database, report and charts; default ${DEFAULT-VALUE}.")
  private Path out;

  @Option(names = "--list", description = "Say which scenarios there are, and do nothing else.")
  private boolean list;

  @Option(names = "--no-window", description = "Open no window, display or not.")
  private boolean noWindow;

  @Mixin private UnitOption units;

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (list) {
      listScenarios();
      return Main.DONE;
    }
    Scenario scenario = Scenarios.of(scenarioName);
    DemoFolder folder = new DemoFolder(out);
    PrintWriter err = spec.commandLine().getErr();
    err.println("Scenario " + scenario.name() + ": " + scenario.story());
    err.flush();
    ZoneId zone = ZoneId.systemDefault();
    long begin = System.nanoTime();
    DemoRun run = record(scenario, folder, lastEvening(scenario, zone));
    sayWhatWasStored(run, (System.nanoTime() - begin) / 1e9, err);

    Recording recording;
    try (Store store = Store.openExisting(folder.database())) {
      recording = store.load(run.run());
    }
    Findings findings = Analysis.of(recording);
    Moment moment = new Moment(zone);
    PrintWriter text = spec.commandLine().getOut();
    new FindingsText(recording, findings, units.choice(), moment).writeGistTo(text);
    sayWhereItIs(folder, folder.write(recording, findings, units.choice(), moment), text);
    if (!noWindow && Display.isThere()) {
      Dashboard.open(folder.database(), units.choice()).awaitClosed();
    }
    return Main.DONE;
  }

  private void listScenarios() {
    PrintWriter text = spec.commandLine().getOut();
    for (Scenario scenario : Scenarios.all()) {
      text.printf("%-17s %s%n", scenario.name(), scenario.story());
    }
    text.flush();
  }

  @SuppressWarnings("SystemConsoleNull") // on Java 17 no console means no terminal
  private static DemoRun record(Scenario scenario, DemoFolder folder, long startMs)
      throws InterruptedException {
    try (Progress progress = Progress.on("Recording the night", System.console() != null)) {
      return DemoRun.record(scenario, folder, startMs, progress::reach);
    }
  }

  /** Six in the evening, the last one from which the whole run is over by now. */
  private static long lastEvening(Scenario scenario, ZoneId zone) {
    Instant latest = Instant.now().minusMillis(Math.round(scenario.site().runS() * 1000));
    ZonedDateTime evening = latest.atZone(zone).with(EVENING);
    if (evening.toInstant().isAfter(latest)) {
      evening = evening.minusDays(1);
    }
    return evening.toInstant().toEpochMilli();
  }

  private static void sayWhatWasStored(DemoRun run, double seconds, PrintWriter err) {
    err.printf(
        Locale.ROOT,
        "Run %d: %,d readings sent in %,d MQTT messages, %,d stored, %s; %.0f s.%n",
        run.run(),
        run.sent(),
        run.messages(),
        run.stored(),
        run.lost() == 0 ? "none lost" : run.lost() + " LOST",
        seconds);
    err.println();
    err.flush();
  }

  private static void sayWhereItIs(DemoFolder folder, List<Path> written, PrintWriter text) {
    text.println();
    text.println("Report:    " + written.get(0));
    text.println("Charts:    " + written.get(1) + " and one for each quantity beside it");
    text.println("Database:  " + folder.database());
    text.println("All there is to read:  heatwake analyse --db " + folder.database());
    text.println("The window:            heatwake window --db " + folder.database());
    text.flush();
  }
}
