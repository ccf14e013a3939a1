package heatwake.collector.mqtt;

/** A broker could not be reached, or did not want us. The message is one line for a person. */
final class BrokerException extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean refused;

  private BrokerException(String message, boolean refused) {
    super(message);
    this.refused = refused;
  }

  /** Nobody answers, or the connection broke. */
  static BrokerException unreachable(String message) {
    return new BrokerException(message, false);
  }

  /** The broker answered and said no: knocking again soon is no use. */
  static BrokerException refused(String message) {
    return new BrokerException(message, true);
  }

  boolean isRefusal() {
    return refused;
  }
}
