package heatwake.collector.recorder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Files as a power cut may leave them: what was synced, and of the rest any part. */
final class CrashedDisk {
  private static final int SECTOR = 512;

  private static final class TracedFile {
    private byte[] synced = {};
    private final List<TracedCall> since = new ArrayList<>();
    private final StringBuilder said = new StringBuilder();
  }

  private final Map<String, TracedFile> files = new HashMap<>();

  void replay(TracedCall call) {
    TracedFile file = files.computeIfAbsent(call.file(), name -> new TracedFile());
    if (call.isSync()) {
      for (TracedCall one : file.since) {
        file.synced = apply(file.synced, one, 0, Integer.MAX_VALUE);
      }
      file.since.clear();
    } else if (call.name().equals("unlink")) {
      files.remove(call.file());
    } else {
      file.since.add(call);
      if (call.name().equals("write")) {
        call.data().forEach(one -> file.said.append((char) one.byteValue()));
      }
    }
  }

  /** Lines written to a file, synced or not: what the world had heard. */
  List<String> linesSaid(String name) {
    TracedFile file = files.get(name);
    return file == null ? List.of() : RecorderProcess.linesOf(file.said.toString());
  }

  void writeTo(Path folder, Random random) throws IOException {
    for (Map.Entry<String, TracedFile> entry : files.entrySet()) {
      // The index of the log is rebuilt from it after a crash.
      if (entry.getKey().startsWith("heatwake.db") && !entry.getKey().endsWith("-shm")) {
        byte[] content = entry.getValue().synced.clone();
        for (TracedCall call : entry.getValue().since) {
          content = tornApply(content, call, random);
        }
        Files.write(folder.resolve(entry.getKey()), content);
      }
    }
  }

  private static byte[] tornApply(byte[] before, TracedCall call, Random random) {
    byte[] after = before;
    if (call.data().isEmpty()) {
      return random.nextBoolean() ? apply(before, call, 0, Integer.MAX_VALUE) : before;
    }
    for (int from = 0; from < call.data().size(); from += SECTOR) {
      if (random.nextBoolean()) {
        after = apply(after, call, from, from + SECTOR);
      }
    }
    return after;
  }

  /**
   * Applies a call, of a write the bytes from one to another; changes the array if it is enough.
   */
  private static byte[] apply(byte[] content, TracedCall call, int from, int to) {
    if (call.name().equals("ftruncate")) {
      return Arrays.copyOf(content, (int) call.offset());
    }
    int start = (int) (call.offset() < 0 ? content.length : call.offset());
    int end = Math.min(to, call.data().size());
    byte[] after = content.length < start + end ? Arrays.copyOf(content, start + end) : content;
    for (int i = from; i < end; i++) {
      after[start + i] = call.data().get(i);
    }
    return after;
  }
}
