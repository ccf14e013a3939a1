package heatwake.collector.recorder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.probe.Delivery;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A file system that really fills up, and is freed again. */
class DiskFullTest {
  private static final int DISK_BYTES = 4_000_000;

  private static final int IN_FLIGHT = 2000;

  @TempDir private Path folder;
  private Path disk;
  private boolean mounted;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createDirectory(folder.resolve("disk"));
    mounted =
        run("mount", "-t", "tmpfs", "-o", "size=" + DISK_BYTES, "tmpfs", disk.toString()) == 0;
    if (!mounted) {
      abort("not run: needs the right to mount a small file system (root)");
    }
  }

  @AfterEach
  void unmount() throws Exception {
    if (mounted) {
      run("umount", disk.toString());
    }
  }

  private static int run(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }

  @Test
  @Timeout(120)
  void recordingGoesOnOnceThereIsRoomAgain() throws Exception {
    Path database = disk.resolve("heatwake.db");
    Path ballast = disk.resolve("ballast");
    AtomicInteger acknowledged = new AtomicInteger();
    int sent = 0;
    long id;
    try (Recorder recorder = Recorder.open(database, RecorderSettings.USUAL)) {
      RecordedRun run = recorder.begin(RigReader.parse("[site]\nname = \"Pad\"\n", "rig.toml"));
      id = run.id();
      Files.write(ballast, new byte[DISK_BYTES / 2]);
      while (recorder.blocked().isEmpty()) {
        run.deliver(
            new Delivery(
                List.of(AcknowledgingRecorder.reading(sent++)), acknowledged::incrementAndGet));
        while (sent - acknowledged.get() > IN_FLIGHT && recorder.blocked().isEmpty()) {
          Thread.sleep(1);
        }
      }
      assertThat(recorder.blocked()).hasValue(database + ": the disk is full");
      int whenFull = acknowledged.get();
      for (int i = 0; i < 1000; i++) {
        run.deliver(
            new Delivery(
                List.of(AcknowledgingRecorder.reading(sent++)), acknowledged::incrementAndGet));
      }
      Thread.sleep(1500);
      assertThat(acknowledged).hasValue(whenFull);

      Files.delete(ballast);
      while (acknowledged.get() < sent) {
        Thread.sleep(20);
      }
      assertThat(recorder.blocked()).isEmpty();
    }
    try (Store store = Store.openExisting(database)) {
      Recording recording = store.load(id);
      Series power = recording.of(Channel.POWER).orElseThrow();
      assertThat(power.size()).isEqualTo(sent);
      assertThat(power.value(sent - 1)).isEqualTo(AcknowledgingRecorder.valueOf(sent - 1));
      assertThat(recording.events())
          .filteredOn(event -> event.kind() == EventKind.STORE_BLOCKED)
          .isNotEmpty()
          .allSatisfy(event -> assertThat(event.endMs()).isPresent());
    }
  }
}
