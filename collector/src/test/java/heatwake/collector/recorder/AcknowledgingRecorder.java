package heatwake.collector.recorder;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Semaphore;

/**
 * A recorder in a process of its own, to be killed: says which run it records, then the number of
 * each reading that it acknowledges, a line each, until it has delivered as many as asked for.
 */
final class AcknowledgingRecorder {
  static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  /** So many that some commits are stored by groups and others reading by reading. */
  private static final int IN_FLIGHT = 200;

  private static final RigFile RIG =
      RigReader.parse(
          "[site]\nname = \"Heron Lane\"\n[[probe]]\nchannel = \"power\"\n", "rig.toml");

  private AcknowledgingRecorder() {}

  public static void main(String[] arguments) throws InterruptedException {
    try (FileOutputStream out = new FileOutputStream(FileDescriptor.out);
        Recorder recorder = Recorder.open(Path.of(arguments[0]), RecorderSettings.USUAL)) {
      int most = Integer.parseInt(arguments[1]);
      RecordedRun run = recorder.begin(RIG);
      say(out, "run " + run.id());
      Semaphore inFlight = new Semaphore(IN_FLIGHT);
      // Like a broker: what was not acknowledged before the kill is delivered again.
      int first = Integer.parseInt(arguments[2]);
      for (int i = first; i < most; i++) {
        inFlight.acquire();
        int number = i;
        run.deliver(
            new Delivery(
                List.of(reading(i)),
                () -> {
                  say(out, Integer.toString(number));
                  inFlight.release();
                }));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The reading with a number: its value can be told from its number. */
  static Reading reading(int number) {
    return new Reading(Channel.POWER, START + number, valueOf(number), true);
  }

  static double valueOf(long number) {
    return Math.sqrt((double) number);
  }

  private static void say(FileOutputStream out, String line) {
    try {
      out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
