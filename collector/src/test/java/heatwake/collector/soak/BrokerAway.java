package heatwake.collector.soak;

/** The broker is stopped and stays away for longer than any time-out. */
final class BrokerAway implements Fault {
  private static final int LEAST_MS = 12_000;

  @Override
  public String name() {
    return "broker away for long";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.broker().close();
    Thread.sleep(LEAST_MS);
    site.pause(LEAST_MS);
    site.broker().start();
  }
}
