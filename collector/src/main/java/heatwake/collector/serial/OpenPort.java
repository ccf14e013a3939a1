package heatwake.collector.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** A serial port while it is open. */
public final class OpenPort implements AutoCloseable {
  /** How long a read waits for a first byte. */
  public static final int READ_TIMEOUT_MS = 300;

  /** As errno(3) of Linux numbers them. */
  private static final int NO_SUCH_FILE = 2;

  private static final int NO_SUCH_DEVICE_ADDRESS = 6;
  private static final int LOCKED = 11;
  private static final int PERMISSION_DENIED = 13;
  private static final int BUSY = 16;
  private static final int NO_SUCH_DEVICE = 19;
  private static final int NOT_A_TERMINAL = 25;

  private final SerialPort port;

  private OpenPort(SerialPort port) {
    this.port = port;
  }

  /**
   * Has something done when the virtual machine ends, before the serial library closes all its
   * ports: whoever reads must have stopped by then, or would take that for an adapter unplugged.
   */
  static void beforeAllClose(Runnable last) {
    SerialPort.addShutdownHook(new Thread(last, "before-ports-close"));
  }

  /** Opens the port at a path. */
  public static OpenPort open(String path, LineSettings settings) throws PortException {
    // The library would take the device of that last name in /dev instead, a console perhaps.
    if (path.startsWith("/") && !Files.exists(Path.of(path))) {
      throw new PortException(absent(path));
    }
    SerialPort port;
    try {
      port = SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException unknown) {
      throw new PortException(absent(path));
    }
    port.setComPortParameters(
        settings.baud(),
        8,
        settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT,
        switch (settings.parity()) {
          case NONE -> SerialPort.NO_PARITY;
          case EVEN -> SerialPort.EVEN_PARITY;
          case ODD -> SerialPort.ODD_PARITY;
        });
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_TIMEOUT_MS, 0);
    if (!port.openPort()) {
      throw new PortException(path + ": " + reason(port.getLastErrorCode()));
    }
    return new OpenPort(port);
  }

  private static String absent(String path) {
    return path + ": " + reason(NO_SUCH_FILE);
  }

  private static String reason(int errno) {
    return switch (errno) {
      case PERMISSION_DENIED ->
          "this user may not open it; on Debian: adduser NAME dialout, then log in again";
      case BUSY, LOCKED -> "the port is busy: another program has it open";
      case NO_SUCH_FILE, NO_SUCH_DEVICE_ADDRESS, NO_SUCH_DEVICE ->
          "no such port; is the adapter plugged in?";
      case NOT_A_TERMINAL -> "not a serial port; heatwake ports lists those there are";
      default -> "cannot be opened (error " + errno + ")";
    };
  }

  /** Lets reads wait another time from now on. */
  public void readTimeout(int ms) {
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, ms, 0);
  }

  /**
   * Reads what there is, waiting for a first byte.
   *
   * @return number of bytes, 0 if none came in time, -1 if the port is gone
   */
  public int read(byte[] target) {
    return read(target, target.length);
  }

  /** As {@link #read(byte[])}, at most so many bytes. */
  public int read(byte[] target, int most) {
    return port.readBytes(target, most);
  }

  /**
   * Writes bytes.
   *
   * @return number of bytes, -1 if the port is gone
   */
  public int write(byte[] bytes, int count) {
    return port.writeBytes(bytes, count);
  }

  /** Bytes that have come and were not read; -1 if the port is gone. */
  public int available() {
    return port.bytesAvailable();
  }

  /** Who the adapter is, if it is a USB adapter. */
  public Optional<UsbIdentity> usb() {
    return PortFinder.usb(port);
  }

  @Override
  public void close() {
    port.closePort();
  }
}
