package heatwake.collector.store;

/**
 * The database cannot be written just now: locked by another program, disk full, disk failing.
 * Nothing of the attempt was stored; the same work may succeed later.
 */
public final class StoreBlockedException extends StoreException {
  private static final long serialVersionUID = 1L;

  private final String mend;

  StoreBlockedException(String message, String mend, Throwable cause) {
    super(message, cause);
    this.mend = mend;
  }

  /** What a person can do about it. */
  public String mend() {
    return mend;
  }
}
