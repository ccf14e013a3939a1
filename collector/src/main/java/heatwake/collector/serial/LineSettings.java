package heatwake.collector.serial;

import heatwake.collector.rig.SourceSpec.Parity;

/** Speed and framing of a serial line; always eight data bits. */
public record LineSettings(int baud, Parity parity, int stopBits) {
  /** The usual framing: no parity, one stop bit. */
  public static LineSettings of(int baud) {
    return new LineSettings(baud, Parity.NONE, 1);
  }

  /** Bits on the wire for one byte, start bit included. */
  public int bitsPerByte() {
    return 1 + 8 + (parity == Parity.NONE ? 0 : 1) + stopBits;
  }
}
