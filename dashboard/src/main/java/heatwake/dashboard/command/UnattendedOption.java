package heatwake.dashboard.command;

import heatwake.analysis.finding.Flag;
import heatwake.collector.broker.EmbeddedBroker;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.recorder.Cut;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.unattended.Attendant;
import heatwake.collector.unattended.FlagCommand;
import heatwake.collector.unattended.FlagListener;
import heatwake.collector.unattended.StatusFile;
import heatwake.collector.unattended.StatusOutlet;
import heatwake.collector.unattended.StatusTopic;
import heatwake.dashboard.output.OutputFile;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Option;

/** The options of a recorder that is left alone. */
final class UnattendedOption {
  private static final Logger LOG = LoggerFactory.getLogger(UnattendedOption.class);
  private static final Pattern SIZE = Pattern.compile("(\\d{1,9})\\s*(MB|GB)");
  private static final int BYTES_PER_READING = 21;

  @Option(
      names = "--cut",
      paramLabel = "WHEN",
      description =
          "Ends the run and goes on in a new one, no reading lost: daily (at local midnight), or at"
              + " a size such as 100MB.")
  private String cut;

  @Option(
      names = "--status",
      paramLabel = "FILE",
      description = "Keeps the recorder's state in a JSON file, new every five seconds.")
  private Path statusFile;

  @Option(
      names = "--status-topic",
      paramLabel = "TOPIC",
      converter = FilledIn.class,
      description =
          "Keeps it on an MQTT topic too (retained, with last will), at the broker of the rig's"
              + " first mqtt source.")
  private String statusTopic;

  @Option(
      names = "--on-flag",
      paramLabel = "COMMAND",
      converter = FilledIn.class,
      description =
          "Run for each flag as it arises, with HEATWAKE_RULE, HEATWAKE_SEVERITY,"
              + " HEATWAKE_EVIDENCE, HEATWAKE_NEXT_CHECK, HEATWAKE_SITE, HEATWAKE_RUN,"
              + " HEATWAKE_START in its environment.")
  private String onFlag;

  /** When runs are to be cut. */
  Cut cut() {
    if (cut == null) {
      return new Cut.Never();
    }
    if (cut.equals("daily")) {
      return new Cut.Daily(ZoneId.systemDefault());
    }
    Matcher size = SIZE.matcher(cut);
    if (!size.matches() || size.group(1).matches("0+")) {
      throw new MistakeException(
          "--cut \""
              + cut
              + "\" is not understood; write --cut daily, or a size in whole MB or GB, such as --cut"
              + " 100MB");
    }
    long bytes =
        Long.parseLong(size.group(1)) * (size.group(2).equals("GB") ? 1000 : 1) * 1_000_000;
    return new Cut.Readings(bytes / BYTES_PER_READING);
  }

  /** Whether a path is that of the status file. */
  boolean isStatusFile(Path path) {
    return path.equals(statusFile);
  }

  /**
   * Where the status is to go.
   *
   * @param database what is recorded into
   * @param read files that the command reads
   */
  List<StatusOutlet> outlets(List<RigFile> rigs, Path database, List<Path> read) {
    List<StatusOutlet> outlets = new ArrayList<>();
    if (statusFile != null) {
      OutputFile target = OutputFile.of("--status", statusFile).apartFromDatabase(database);
      read.forEach(file -> target.apartFrom(file, "a file that record reads"));
      outlets.add(new StatusFile(statusFile));
    }
    if (statusTopic != null) {
      outlets.add(topic(rigs));
    }
    return outlets;
  }

  private StatusOutlet topic(List<RigFile> rigs) {
    for (RigFile rig : rigs) {
      for (SourceSpec source : rig.sources()) {
        if (source instanceof SourceSpec.Mqtt mqtt) {
          return new StatusTopic(
              MqttSources.retained(
                  mqtt,
                  rig.rig().site().name(),
                  statusTopic,
                  StatusTopic.LAST_WILL,
                  System::getenv));
        }
      }
    }
    throw new MistakeException(
        "--status-topic needs a broker, but the rig has no mqtt source; add one, or use --status");
  }

  /** Who attends to a recorder, once started. */
  Attendant attendant(
      Recorder recorder, Optional<EmbeddedBroker> broker, List<StatusOutlet> outlets) {
    List<FlagListener> listeners = new ArrayList<>();
    listeners.add(UnattendedOption::log);
    if (onFlag != null) {
      listeners.add(new FlagCommand(onFlag));
    }
    return new Attendant(
        recorder,
        broker,
        outlets,
        (site, run, flag) -> listeners.forEach(one -> one.arose(site, run, flag)));
  }

  private static void log(String site, long run, Flag flag) {
    LOG.warn(
        "{}, run {}: {} ({}): {}", site, run, flag.rule(), flag.severity().id(), flag.evidence());
  }
}
