package heatwake.collector.recorder;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One system call on a file, as strace noted it.
 *
 * @param name which call
 * @param file the file's name
 * @param data what was written; a list because records compare by value
 * @param offset where; -1 for the end
 */
record TracedCall(String name, String file, List<Byte> data, long offset) {
  /** {@code 4711 pwrite64(9</tmp/x.db-wal>, "\x37\x7f"..., 32, 0) = 32}. */
  private static final Pattern CALL =
      Pattern.compile("^(\\d+) +(\\w+)\\((?:\\d+<([^>]*)>|\"([^\"]*)\")(.*)$");

  private static final Pattern RESUMED = Pattern.compile("^(\\d+) +<\\.\\.\\. (\\w+) resumed>.*$");
  private static final Pattern WRITTEN =
      Pattern.compile(", \"((?:\\\\x[0-9a-f]{2})*)\"(?:\\.\\.\\.)?, \\d+(?:, (\\d+))?");
  private static final Pattern LENGTH = Pattern.compile(", (\\d+)");

  boolean isSync() {
    return name.equals("fsync") || name.equals("fdatasync");
  }

  /** The calls on files of a folder, in order; a sync stands where it returned. */
  static List<TracedCall> read(Stream<String> lines, Path folder) {
    List<TracedCall> calls = new ArrayList<>();
    Map<String, TracedCall> pending = new HashMap<>();
    lines.forEach(
        line -> {
          Matcher resumed = RESUMED.matcher(line);
          if (resumed.matches()) {
            TracedCall call = pending.remove(resumed.group(1));
            if (call != null) {
              calls.add(call);
            }
            return;
          }
          Matcher call = CALL.matcher(line);
          if (!call.matches()) {
            return;
          }
          Path file = Path.of(decodedPath(call.group(3) != null ? call.group(3) : call.group(4)));
          if (!folder.equals(file.getParent())) {
            return;
          }
          TracedCall made = of(call.group(2), file.getFileName().toString(), call.group(5));
          if (made.isSync() && line.endsWith("<unfinished ...>")) {
            pending.put(call.group(1), made);
          } else {
            calls.add(made);
          }
        });
    return calls;
  }

  private static TracedCall of(String name, String file, String rest) {
    Matcher written = WRITTEN.matcher(rest);
    if (name.endsWith("write") || name.equals("pwrite64")) {
      if (!written.find()) {
        throw new IllegalArgumentException("not understood: " + name + rest);
      }
      long offset = written.group(2) == null ? -1 : Long.parseLong(written.group(2));
      return new TracedCall(name, file, bytes(written.group(1)), offset);
    }
    Matcher length = LENGTH.matcher(rest);
    return new TracedCall(
        name, file, List.of(), length.find() ? Long.parseLong(length.group(1)) : 0);
  }

  private static List<Byte> bytes(String hex) {
    List<Byte> bytes = new ArrayList<>(hex.length() / 4);
    for (int i = 0; i < hex.length(); i += 4) {
      bytes.add((byte) Integer.parseInt(hex, i + 2, i + 4, 16));
    }
    return bytes;
  }

  /** With -xx also names are written in hexadecimal. */
  private static String decodedPath(String text) {
    if (!text.startsWith("\\x")) {
      return text;
    }
    ByteArrayOutputStream name = new ByteArrayOutputStream();
    bytes(text).forEach(name::write);
    return name.toString(java.nio.charset.StandardCharsets.UTF_8);
  }
}
