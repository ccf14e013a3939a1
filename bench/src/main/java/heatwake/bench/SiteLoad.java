package heatwake.bench;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.source.ProbeSources;
import heatwake.collector.unattended.Attendant;
import heatwake.collector.unattended.StatusFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a recorder of one site costs: a process of its own with the launcher's options, sixteen
 * channels at one reading a second over a serial line (a pseudo-terminal pair by socat), status
 * file and flags included. Its processor time after the start, and its resident memory, as Linux
 * counts them.
 */
public final class SiteLoad {
  private static final List<Channel> CHANNELS = List.of(Channel.values()).subList(0, 16);
  private static final int START_S = 20;
  private static final int SECONDS = 180;

  private SiteLoad() {}

  /** Without arguments measures; with a folder records there until it is killed. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    if (arguments.length > 0) {
      record(Path.of(arguments[0]));
    } else {
      measure(Files.createTempDirectory("heatwake-bench"));
    }
  }

  private static void measure(Path folder) throws IOException, InterruptedException {
    Path far = folder.resolve("far");
    Process cable =
        new ProcessBuilder(
                "socat",
                "pty,raw,echo=0,link=" + folder.resolve("near"),
                "pty,raw,echo=0,link=" + far)
            .start();
    while (!Files.exists(far)) {
      TimeUnit.MILLISECONDS.sleep(20);
    }
    Process recorder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-cp",
                System.getProperty("java.class.path"),
                SiteLoad.class.getName(),
                folder.toString())
            .inheritIO()
            .start();
    try (OutputStream line = Files.newOutputStream(far)) {
      send(line, START_S);
      Duration before = cpu(recorder);
      send(line, SECONDS);
      double share =
          (double) cpu(recorder).minus(before).toMillis() / Duration.ofSeconds(SECONDS).toMillis();
      System.out.printf(
          "%.2f %% of a core, %s resident at the end, %s at most%n",
          100 * share, memory(recorder, "VmRSS"), memory(recorder, "VmHWM"));
    } finally {
      recorder.destroy();
      cable.destroy();
    }
    System.out.println("database left in " + folder);
  }

  private static void send(OutputStream line, int seconds)
      throws IOException, InterruptedException {
    for (int second = 0; second < seconds; second++) {
      String text =
          IntStream.range(0, CHANNELS.size())
              .mapToObj(i -> "c" + i + "=" + (20 + i / 10.0 + Math.random()))
              .collect(Collectors.joining(" ", "", "\n"));
      line.write(text.getBytes(StandardCharsets.UTF_8));
      line.flush();
      TimeUnit.SECONDS.sleep(1);
    }
  }

  private static Duration cpu(Process process) {
    return process.info().totalCpuDuration().orElseThrow();
  }

  private static String memory(Process process, String key) throws IOException {
    return Files.readAllLines(Path.of("/proc/" + process.pid() + "/status")).stream()
        .filter(line -> line.startsWith(key + ":"))
        .map(line -> line.substring(key.length() + 1).strip())
        .findFirst()
        .orElseThrow();
  }

  private static void record(Path folder) throws InterruptedException {
    StringBuilder rigText = new StringBuilder("[site]\nname = \"Heron Lane\"\n[[source]]\n");
    rigText.append("name = \"clips\"\nserial = \"").append(folder.resolve("near")).append("\"\n");
    for (int i = 0; i < CHANNELS.size(); i++) {
      Channel channel = CHANNELS.get(i);
      rigText
          .append("[[probe]]\nsource = \"clips\"\nevery = \"1 s\"\nchannel = \"")
          .append(channel.id())
          .append("\"\nfield = \"c")
          .append(i)
          .append("\"\nunit = \"")
          .append(channel.storedUnit().code())
          .append("\"\n");
    }
    RigFile rig = RigReader.parse(rigText.toString(), "rig.toml");
    try (Recorder recorder = Recorder.open(folder.resolve("heatwake.db"), RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(rig);
      ProbeSource source = ProbeSources.of(rig).get(0);
      source.start(run);
      try (Attendant attendant =
          new Attendant(
              recorder,
              List.of(new StatusFile(folder.resolve("status.json"))),
              (site, id, flag) -> {})) {
        attendant.start();
        TimeUnit.DAYS.sleep(1);
      }
    }
  }
}
