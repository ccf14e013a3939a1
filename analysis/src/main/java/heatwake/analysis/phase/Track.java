package heatwake.analysis.phase;

import java.util.Arrays;

/** Yes, no or not known at each instant of a timeline. */
public final class Track {
  static final byte NO = -1;
  static final byte UNKNOWN = 0;
  static final byte YES = 1;

  private final byte[] said;

  Track(int size) {
    this.said = new byte[size];
  }

  /** Yes from {@code on} upwards, no below {@code off}, what it was in between. */
  static Track above(double[] values, double on, double off) {
    Track track = new Track(values.length);
    byte now = UNKNOWN;
    for (int i = 0; i < values.length; i++) {
      double value = values[i];
      if (Double.isNaN(value)) {
        continue;
      }
      if (value >= on) {
        now = YES;
      } else if (value < off || now == UNKNOWN) {
        now = NO;
      }
      track.said[i] = now;
    }
    return track;
  }

  public int size() {
    return said.length;
  }

  public byte at(int i) {
    return said[i];
  }

  public boolean yes(int i) {
    return said[i] == YES;
  }

  public boolean no(int i) {
    return said[i] == NO;
  }

  public boolean known(int i) {
    return said[i] != UNKNOWN;
  }

  void set(int i, byte value) {
    said[i] = value;
  }

  void fill(int from, int to, byte value) {
    Arrays.fill(said, from, to, value);
  }

  Track copy() {
    Track copy = new Track(said.length);
    System.arraycopy(said, 0, copy.said, 0, said.length);
    return copy;
  }

  /**
   * Moves the change between {@code edge - 1} and {@code edge} to another instant, but not past the
   * next change on that side.
   */
  void moveEdge(int edge, int at) {
    byte before = said[edge - 1];
    byte after = said[edge];
    for (int i = edge - 1;
        i >= Math.max(1, at) && said[i] == before && said[i - 1] == before;
        i--) {
      said[i] = after;
    }
    for (int i = edge; i < at && i + 1 < said.length && said[i + 1] == after; i++) {
      said[i] = before;
    }
  }

  /** Whether it says anything at all. */
  public boolean speaks() {
    for (byte one : said) {
      if (one != UNKNOWN) {
        return true;
      }
    }
    return false;
  }

  /** Whether it ever says yes. */
  boolean everYes() {
    for (byte one : said) {
      if (one == YES) {
        return true;
      }
    }
    return false;
  }

  /** The last instant at which it says something; the last of all if it never does. */
  int lastKnown() {
    int i = said.length - 1;
    while (i > 0 && said[i] == UNKNOWN) {
      i--;
    }
    return said[i] == UNKNOWN ? said.length - 1 : i;
  }

  /** End (exclusive) of the stretch of one answer that begins at {@code from}. */
  int endOfStretch(int from) {
    int end = from + 1;
    while (end < said.length && said[end] == said[from]) {
      end++;
    }
    return end;
  }

  /** The same with every yes lasting so many instants longer. */
  Track after(int instants) {
    Track longer = new Track(said.length);
    int since = instants + 1;
    for (int i = 0; i < said.length; i++) {
      since = said[i] == YES ? 0 : since + 1;
      longer.said[i] = since <= instants && said[i] == NO ? YES : said[i];
    }
    return longer;
  }

  /** Says the same over silences of up to so many instants between two equal answers. */
  void overSilences(int longest) {
    for (int i = 0; i < said.length; ) {
      int end = endOfStretch(i);
      boolean between = i > 0 && end < said.length && said[i - 1] == said[end];
      if (said[i] == UNKNOWN && between && end - i <= longest) {
        fill(i, end, said[i - 1]);
      }
      i = end;
    }
  }

  /**
   * Drops answers of one kind that last less than {@code shortest} instants and stand between two
   * of the opposite kind: an inrush or a glitch is not a state.
   */
  Track withoutBlips(byte answer, int shortest) {
    return withoutBlips(answer, shortest, (from, to) -> false);
  }

  /** Whether a stretch, from its first instant to the first after it, is more than a blip. */
  @FunctionalInterface
  interface Witness {
    boolean backs(int from, int to);
  }

  /** The same, but for blips that something else bears out. */
  Track withoutBlips(byte answer, int shortest, Witness witness) {
    int i = 0;
    while (i < said.length) {
      int end = endOfStretch(i);
      boolean between = i > 0 && end < said.length;
      if (said[i] == answer
          && between
          && end - i < shortest
          && said[i - 1] == -answer
          && said[end] == -answer
          && !witness.backs(i, end)) {
        fill(i, end, (byte) -answer);
      }
      i = end;
    }
    return this;
  }
}
