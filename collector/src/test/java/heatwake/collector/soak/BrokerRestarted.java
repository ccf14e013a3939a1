package heatwake.collector.soak;

/** The broker is stopped and started again. */
final class BrokerRestarted implements Fault {
  @Override
  public String name() {
    return "broker restarted";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.broker().close();
    site.pause(2000);
    site.broker().start();
  }
}
