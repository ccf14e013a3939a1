package heatwake.collector.unattended;

import java.io.IOException;

/** Where the status goes. */
public interface StatusOutlet extends AutoCloseable {
  /** What it says last, after a clean end. */
  String STOPPED = "{\"state\":\"stopped\"}";

  /** Replaces the status before. */
  void put(String json) throws IOException;

  @Override
  default void close() {}
}
