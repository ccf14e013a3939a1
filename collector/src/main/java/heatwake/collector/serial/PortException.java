package heatwake.collector.serial;

/** A port cannot be opened. The message is one line for a person. */
public final class PortException extends Exception {
  private static final long serialVersionUID = 1L;

  PortException(String message) {
    super(message);
  }
}
