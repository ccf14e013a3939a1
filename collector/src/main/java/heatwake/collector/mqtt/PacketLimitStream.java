package heatwake.collector.mqtt;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/**
 * Bytes from a broker with every oversized PUBLISH cut short, so that no peer decides how much
 * memory we take: the MQTT client allocates whatever length a packet announces, up to 256 MB.
 * Refusing such a packet is no way out, since the broker would deliver it again for ever; cut short
 * it arrives, is seen to be too long, and is acknowledged.
 *
 * <p>MQTT 3.1.1 section 2.2: a fixed header is one byte of type and flags and one to four bytes of
 * remaining length, seven bits each, the lowest first.
 */
final class PacketLimitStream extends InputStream {
  /** Longest packet body let through; holds the longest topic (64 kB) and more than any payload. */
  static final int LONGEST_BODY = 256 * 1024;

  private static final int PUBLISH = 3;
  private static final int LONGEST_HEADER = 5;

  private static final int DUPLICATE_FLAG = 0x08;

  /** Hears of each PUBLISH that passes. */
  interface Witness {
    /** A PUBLISH begins, marked as a duplicate or not. */
    void publish(boolean duplicate);
  }

  private final InputStream in;
  private final Witness witness;
  private final byte[] header = new byte[LONGEST_HEADER];

  /** Bytes of the header read from the peer so far, while it is incomplete. */
  private int headerLength;

  /** Header bytes ready to be handed on. */
  private byte[] ready = {};

  private int readyAt;
  private long bodyLeft;
  private long skipLeft;

  PacketLimitStream(InputStream in, Witness witness) {
    this.in = in;
    this.witness = witness;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] target, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (readyAt == ready.length && bodyLeft == 0 && !nextHeader()) {
      return -1;
    }
    if (readyAt < ready.length) {
      int count = Math.min(length, ready.length - readyAt);
      System.arraycopy(ready, readyAt, target, offset, count);
      readyAt += count;
      return count;
    }
    int count = in.read(target, offset, (int) Math.min(length, bodyLeft));
    if (count > 0) {
      bodyLeft -= count;
    }
    return count;
  }

  /** Reads the next packet's header whole; a time-out on the way loses nothing. */
  private boolean nextHeader() throws IOException {
    skipRest();
    while (!isHeaderComplete()) {
      if (headerLength == LONGEST_HEADER) {
        throw new IOException("the broker sends something that is not MQTT");
      }
      int next = in.read();
      if (next < 0) {
        return false;
      }
      header[headerLength++] = (byte) next;
    }
    long length = remainingLength();
    boolean publish = (header[0] & 0xF0) >> 4 == PUBLISH;
    if (publish) {
      witness.publish((header[0] & DUPLICATE_FLAG) != 0);
    }
    if (length > LONGEST_BODY && !publish) {
      throw new IOException("the broker sends a packet of " + length + " bytes");
    }
    ready =
        length > LONGEST_BODY
            ? headerFor(header[0], LONGEST_BODY)
            : Arrays.copyOf(header, headerLength);
    readyAt = 0;
    bodyLeft = Math.min(length, LONGEST_BODY);
    skipLeft = length - bodyLeft;
    headerLength = 0;
    return true;
  }

  private void skipRest() throws IOException {
    while (skipLeft > 0) {
      long skipped = in.skip(skipLeft);
      if (skipped == 0) {
        if (in.read() < 0) {
          throw new EOFException();
        }
        skipped = 1;
      }
      skipLeft -= skipped;
    }
  }

  private boolean isHeaderComplete() {
    return headerLength >= 2 && header[headerLength - 1] >= 0;
  }

  private long remainingLength() {
    long length = 0;
    for (int i = 1; i < headerLength; i++) {
      length |= ((long) (header[i] & 0x7F)) << (7 * (i - 1));
    }
    return length;
  }

  private static byte[] headerFor(byte typeAndFlags, int length) {
    byte[] made = new byte[LONGEST_HEADER];
    made[0] = typeAndFlags;
    int at = 1;
    int left = length;
    do {
      int digit = left & 0x7F;
      left >>= 7;
      made[at++] = (byte) (left > 0 ? digit | 0x80 : digit);
    } while (left > 0);
    return Arrays.copyOf(made, at);
  }

  @Override
  public int available() throws IOException {
    return ready.length - readyAt + (int) Math.min(in.available(), bodyLeft);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
