package heatwake.collector.soak;

/** The serial adapter is unplugged and plugged in again. */
final class CablePulled implements Fault {
  @Override
  public String name() {
    return "cable pulled";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.line().pull();
    site.pause(2000);
    site.line().plug();
  }
}
