package heatwake.collector.modbus;

import com.ghgande.j2mod.modbus.io.AbstractModbusTransport;
import com.ghgande.j2mod.modbus.io.ModbusRTUTransport;
import com.ghgande.j2mod.modbus.net.AbstractSerialConnection;
import heatwake.collector.serial.LineSettings;
import heatwake.collector.serial.OpenPort;
import java.io.IOException;
import java.util.Set;

/**
 * Our serial port beneath the Modbus library, with one deadline for a whole answer, and with the
 * difference kept between silence, noise and a port that is gone.
 */
final class BusPort extends AbstractSerialConnection {
  /** How long a unit may think before it answers. */
  private static final int ANSWER_TIMEOUT_MS = 400;

  private static final int LONGEST_FRAME_BYTES = 256;
  private static final int SHORTEST_WAIT_MS = 5;

  private final String path;
  private final OpenPort port;
  private final LineSettings settings;
  private final ModbusRTUTransport transport = new ModbusRTUTransport();
  private long deadlineNanos;
  private boolean gone;
  private int received;

  BusPort(String path, OpenPort port, LineSettings settings) {
    this.path = path;
    this.port = port;
    this.settings = settings;
    try {
      transport.setCommPort(this);
    } catch (IOException impossible) {
      throw new IllegalStateException("it only keeps a reference", impossible);
    }
  }

  /** Throws away what came late to an earlier request, and gives the coming answer its time. */
  void beginRequest() {
    byte[] stale = new byte[LONGEST_FRAME_BYTES];
    while (port.available() > 0 && port.read(stale) > 0) {
      // An answer to nobody.
    }
    received = 0;
    long frameMs = 1000L * LONGEST_FRAME_BYTES * settings.bitsPerByte() / settings.baud();
    deadlineNanos = System.nanoTime() + (ANSWER_TIMEOUT_MS + 2 * frameMs) * 1_000_000;
  }

  /** Whether the port turned out to be gone. */
  boolean isGone() {
    return gone;
  }

  /** Bytes that came in answer to the last request. */
  int received() {
    return received;
  }

  @Override
  public int readBytes(byte[] buffer, int bytesToRead) {
    byte[] piece = new byte[bytesToRead];
    int have = 0;
    while (have < bytesToRead && !gone) {
      long leftMs = (deadlineNanos - System.nanoTime()) / 1_000_000;
      if (leftMs <= 0) {
        break;
      }
      port.readTimeout((int) Math.max(SHORTEST_WAIT_MS, leftMs));
      int count = port.read(piece, bytesToRead - have);
      if (count < 0) {
        gone = true;
      } else {
        System.arraycopy(piece, 0, buffer, have, count);
        have += count;
        received += count;
      }
    }
    return have;
  }

  @Override
  public int writeBytes(byte[] buffer, int bytesToWrite) {
    int written = port.write(buffer, bytesToWrite);
    gone |= written < 0;
    return written;
  }

  @Override
  public int bytesAvailable() {
    int count = port.available();
    gone |= count < 0;
    return Math.max(0, count);
  }

  @Override
  public AbstractModbusTransport getModbusTransport() {
    return transport;
  }

  @Override
  public void open() {
    // Opened before it was handed to us.
  }

  @Override
  public void close() {
    port.close();
  }

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public int getBaudRate() {
    return settings.baud();
  }

  @Override
  public int getNumDataBits() {
    return 8;
  }

  @Override
  public int getNumStopBits() {
    return settings.stopBits();
  }

  @Override
  public int getParity() {
    return switch (settings.parity()) {
      case NONE -> NO_PARITY;
      case EVEN -> EVEN_PARITY;
      case ODD -> ODD_PARITY;
    };
  }

  @Override
  public String getPortName() {
    return path;
  }

  @Override
  public String getDescriptivePortName() {
    return path;
  }

  @Override
  public void setComPortTimeouts(int mode, int readTimeout, int writeTimeout) {
    // The deadline of each request rules.
  }

  @Override
  public int getTimeout() {
    return ANSWER_TIMEOUT_MS;
  }

  @Override
  public void setTimeout(int timeout) {
    // The deadline of each request rules.
  }

  @Override
  public Set<String> getCommPorts() {
    return Set.of(path);
  }
}
