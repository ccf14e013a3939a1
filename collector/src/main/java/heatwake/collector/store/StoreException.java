package heatwake.collector.store;

/** The database failed: a fault of the program or the machine. */
public class StoreException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  StoreException(String message, Throwable cause) {
    super(message, cause);
  }
}
