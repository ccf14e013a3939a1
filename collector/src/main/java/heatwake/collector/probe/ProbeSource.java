package heatwake.collector.probe;

/**
 * A source of readings: a serial line, a broker, a bus. It reports its own losses as events and
 * comes back by itself; nothing it meets on the wire makes it throw.
 */
public interface ProbeSource extends AutoCloseable {
  /** Name in the rig. */
  String name();

  /**
   * Starts reading on threads of its own and returns when the source is open, or being retried
   * after a first failure (which is then already reported to {@code intake}).
   */
  void start(Intake intake) throws InterruptedException;

  /** Stops and frees the port or connection; every reading already delivered stays delivered. */
  @Override
  void close();
}
