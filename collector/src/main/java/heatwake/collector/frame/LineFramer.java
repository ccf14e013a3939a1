package heatwake.collector.frame;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a stream of bytes into lines ended by CR, LF or both. A line may come in any number of
 * pieces. What cannot be a line is told apart, never guessed at:
 *
 * <ul>
 *   <li>the first line after opening in the middle of a stream has lost its beginning;
 *   <li>a line longer than {@value #LONGEST} bytes is thrown away up to its end;
 *   <li>a line that stops short for {@value #TORN_AFTER_MS} ms was torn: what follows is a new one.
 * </ul>
 */
public final class LineFramer {
  /** Longer than any line with readings in it. */
  public static final int LONGEST = 4096;

  /** Longer than firmware pauses in the middle of a line. */
  public static final long TORN_AFTER_MS = 5000;

  /** Enough of a line that is thrown away to show a person. */
  private static final int KEPT_OF_OVERLONG = 200;

  private final byte[] buffer = new byte[LONGEST];
  private int length;
  private boolean overlong;
  private boolean beginningSeen;
  private long lastByteMs;

  /** What was found between two line ends. */
  public sealed interface Frame {
    /** A whole line, not blank. What was not UTF-8 in it stands as U+FFFD. */
    record Line(String text) implements Frame {}

    /** The end of a line that had begun before we listened. */
    record Remainder(String text) implements Frame {}

    /** Something that is no line. */
    record Broken(String beginning, String reason) implements Frame {}
  }

  /** The line was silent before the first byte: what comes next is the beginning of a line. */
  public void quietAtFirst() {
    beginningSeen = true;
  }

  /**
   * Takes bytes as they come.
   *
   * @param nowMs on any clock that does not jump
   */
  public List<Frame> feed(byte[] bytes, int count, long nowMs) {
    List<Frame> frames = new ArrayList<>(passed(nowMs));
    for (int i = 0; i < count; i++) {
      byte next = bytes[i];
      if (next == '\n' || next == '\r') {
        endLine(frames);
      } else if (length == LONGEST) {
        overlong = true;
      } else {
        buffer[length++] = next;
      }
    }
    lastByteMs = nowMs;
    return frames;
  }

  /** Time has passed without a byte. */
  public List<Frame> passed(long nowMs) {
    return length > 0 && nowMs - lastByteMs >= TORN_AFTER_MS ? torn() : List.of();
  }

  /** The stream has ended, or what follows does not belong to what came. */
  public List<Frame> torn() {
    if (length == 0) {
      return List.of();
    }
    Frame broken = new Frame.Broken(text(KEPT_OF_OVERLONG), "a line without an end");
    clear();
    return List.of(broken);
  }

  private void endLine(List<Frame> frames) {
    if (overlong) {
      frames.add(
          new Frame.Broken(text(KEPT_OF_OVERLONG), "a line of more than " + LONGEST + " bytes"));
    } else {
      String text = text(length);
      if (!text.isBlank()) {
        frames.add(beginningSeen ? new Frame.Line(text) : new Frame.Remainder(text));
      }
    }
    beginningSeen = true;
    clear();
  }

  private String text(int most) {
    return new String(buffer, 0, Math.min(length, most), StandardCharsets.UTF_8);
  }

  private void clear() {
    length = 0;
    overlong = false;
  }
}
