package heatwake.collector.soak;

/**
 * The broker is killed and started again. It acknowledges to a sender before it has saved the
 * message, so what it acknowledged last may be gone with it, and is not owed.
 */
final class BrokerKilled implements Fault {
  private static final int SAVED_AFTER_MS = 2000;

  @Override
  public String name() {
    return "broker killed";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    long sinceMs = System.currentTimeMillis() - SAVED_AFTER_MS;
    site.broker().kill();
    // What it acknowledged at the last moment has been noted by then.
    Thread.sleep(500);
    site.mqtt3().pardon(sinceMs);
    site.mqtt5().pardon(sinceMs);
    site.pause(2000);
    site.broker().start();
  }
}
