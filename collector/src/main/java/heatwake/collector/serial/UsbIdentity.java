package heatwake.collector.serial;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a USB serial adapter says of itself, so that it is known again under another name. Written
 * {@code usb:0403:6001} or, with a serial number, {@code usb:0403:6001:A50285BI}.
 *
 * @param vendor vendor id
 * @param product product id
 * @param serial serial number; many adapters have none
 */
public record UsbIdentity(int vendor, int product, Optional<String> serial) {
  private static final Pattern WRITTEN =
      Pattern.compile("usb:([0-9A-Fa-f]{4}):([0-9A-Fa-f]{4})(?::(.+))?");

  /** Reads it as written; empty if the text is something else. */
  public static Optional<UsbIdentity> parse(String text) {
    Matcher match = WRITTEN.matcher(text);
    return match.matches()
        ? Optional.of(
            new UsbIdentity(
                Integer.parseInt(match.group(1), 16),
                Integer.parseInt(match.group(2), 16),
                Optional.ofNullable(match.group(3))))
        : Optional.empty();
  }

  /** Whether an adapter that says {@code other} may be the one meant. */
  boolean fits(UsbIdentity other) {
    return vendor == other.vendor
        && product == other.product
        && (serial.isEmpty() || serial.equals(other.serial));
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "usb:%04x:%04x", vendor, product)
        + serial.map(number -> ":" + number).orElse("");
  }
}
