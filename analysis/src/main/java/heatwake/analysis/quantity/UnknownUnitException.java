package heatwake.analysis.quantity;

/**
 * A unit that does not exist or does not measure the quantity asked for. The message names the
 * mend.
 */
public final class UnknownUnitException extends IllegalArgumentException {
  UnknownUnitException(String message) {
    super(message);
  }
}
