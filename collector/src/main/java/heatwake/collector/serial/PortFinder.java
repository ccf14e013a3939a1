package heatwake.collector.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Finds the port that a rig means, also after it was plugged in again under another name. */
public final class PortFinder {
  private final Supplier<List<PortInfo>> present;

  PortFinder(Supplier<List<PortInfo>> present) {
    this.present = present;
  }

  /** Looks among the ports of this machine. */
  public static PortFinder ofThisMachine() {
    return new PortFinder(PortFinder::list);
  }

  /** The serial ports that the system knows of. A pseudo-terminal is none of them. */
  public static List<PortInfo> list() {
    return Arrays.stream(SerialPort.getCommPorts()).map(PortFinder::describe).toList();
  }

  private static PortInfo describe(SerialPort port) {
    return new PortInfo(port.getSystemPortPath(), port.getDescriptivePortName(), usb(port));
  }

  static Optional<UsbIdentity> usb(SerialPort port) {
    if (port.getVendorID() <= 0) {
      return Optional.empty();
    }
    String serial = port.getSerialNumber();
    boolean numbered =
        serial != null && !serial.isBlank() && !"0".equals(serial) && !"Unknown".equals(serial);
    return Optional.of(
        new UsbIdentity(
            port.getVendorID(),
            port.getProductID(),
            numbered ? Optional.of(serial) : Optional.empty()));
  }

  /**
   * The path to open now for the port a rig names.
   *
   * @param named a path, a name or a USB identity
   * @param lastSeen who was at that path when it was last open
   * @return empty if a USB identity is meant and no adapter or more than one has it
   */
  public Optional<String> path(String named, Optional<UsbIdentity> lastSeen) {
    Optional<UsbIdentity> asked = UsbIdentity.parse(named);
    if (asked.isPresent()) {
      return only(asked.get());
    }
    // The same adapter under another name goes before another adapter under the same name.
    return lastSeen.flatMap(this::only).or(() -> Optional.of(named));
  }

  private Optional<String> only(UsbIdentity wanted) {
    List<String> found =
        present.get().stream()
            .filter(port -> port.usb().filter(wanted::fits).isPresent())
            .map(PortInfo::path)
            .toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }
}
