package heatwake.collector.serial;

import java.util.Optional;

/**
 * A serial port of this machine.
 *
 * @param path what to write in the rig
 * @param description what the system calls it
 * @param usb who it is, if it is a USB adapter
 */
public record PortInfo(String path, String description, Optional<UsbIdentity> usb) {}
