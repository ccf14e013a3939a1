package heatwake.collector.soak;

/** Nothing passes between broker and recorder for a while. */
final class NetworkCut implements Fault {
  @Override
  public String name() {
    return "network cut";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.network().cut();
    site.pause(3000);
    site.network().join();
  }
}
