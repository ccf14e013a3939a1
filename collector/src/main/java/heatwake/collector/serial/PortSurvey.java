package heatwake.collector.serial;

import heatwake.collector.frame.LineFramer;
import heatwake.collector.frame.LineFramer.Frame;
import heatwake.collector.frame.LineGuess;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Listens to a port at the usual speeds until what it says makes sense. */
public final class PortSurvey {
  /** Most common first. */
  private static final int[] SPEEDS = {9600, 115_200, 19_200, 38_400, 57_600, 4800, 2400, 230_400};

  /** So many lines tell enough. */
  private static final int LINES_ENOUGH = 20;

  private static final int READ_AT_MOST = 4096;

  private PortSurvey() {}

  /** What was heard. */
  public sealed interface Heard {
    /** Not a byte. */
    record Nothing() implements Heard {}

    /** Bytes, but nothing that is a line of readings at any speed. */
    record Noise() implements Heard {}

    /**
     * Lines of readings.
     *
     * @param lines the first of them, as they came
     */
    record Readings(int baud, LineGuess guess, List<String> lines) implements Heard {}
  }

  /**
   * Listens to one port.
   *
   * @param seconds how long, at each speed
   */
  public static Heard listen(String path, int seconds) throws PortException {
    Optional<Heard.Readings> best = Optional.empty();
    for (int baud : SPEEDS) {
      Sample sample = sample(path, baud, seconds);
      if (sample.bytes == 0) {
        // At a wrong speed there would be bytes, only wrong ones.
        return best.isPresent() ? best.get() : new Heard.Nothing();
      }
      Optional<Heard.Readings> found =
          LineGuess.of(sample.lines)
              .map(guess -> new Heard.Readings(baud, guess, List.copyOf(sample.lines)));
      if (found.isPresent() && found.get().guess().isSure()) {
        return found.get();
      }
      if (found.isPresent() && isBetter(found.get(), best)) {
        best = found;
      }
    }
    return best.isPresent() ? best.get() : new Heard.Noise();
  }

  private static boolean isBetter(Heard.Readings one, Optional<Heard.Readings> other) {
    return other.isEmpty() || one.guess().readableLines() > other.get().guess().readableLines();
  }

  private static final class Sample {
    private final List<String> lines = new ArrayList<>();
    private long bytes;
  }

  private static Sample sample(String path, int baud, int seconds) throws PortException {
    Sample sample = new Sample();
    LineFramer framer = new LineFramer();
    byte[] bytes = new byte[READ_AT_MOST];
    try (OpenPort port = OpenPort.open(path, LineSettings.of(baud))) {
      long start = System.nanoTime();
      boolean first = true;
      while (System.nanoTime() - start < seconds * 1_000_000_000L
          && sample.lines.size() < LINES_ENOUGH) {
        int count = port.read(bytes);
        if (count < 0) {
          throw new PortException(path + ": the port went away");
        }
        if (first && count == 0) {
          framer.quietAtFirst();
        }
        first = false;
        sample.bytes += count;
        for (Frame frame : framer.feed(bytes, count, System.nanoTime() / 1_000_000)) {
          if (frame instanceof Frame.Line line) {
            sample.lines.add(line.text());
          } else if (frame instanceof Frame.Broken broken) {
            sample.lines.add(broken.beginning());
          }
        }
      }
    }
    return sample;
  }
}
